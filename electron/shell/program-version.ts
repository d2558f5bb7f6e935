/** The program's own version, as logs and the screen name it. */
import settings from '../../package.json' with { type: 'json' };

export const programVersion: string = settings.version;
