/** Where the program keeps things, the same for every shell. */
import { homedir } from 'node:os';
import path from 'node:path';

export interface Places {
  /** Surveys and jobs. */
  readonly data: string;
  /** Preferences only. */
  readonly settings: string;
  /** Every memory image that was accepted. */
  readonly vault: string;
  /** One lock for each pad in use; the same folder for all programs of one account. */
  readonly locks: string;
}

interface Machine {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

/** The folder of the program where nobody chose another. */
export const FOLDER_NAME = 'stickwright';

/**
 * Linux: XDG Base Directory Specification 0.8, which ignores a path that is not absolute. macOS: Application Support.
 * Windows: the local and the roaming folder of applications. STICKWRIGHT_HOME puts everything into one folder.
 */
export function findPlaces(
  { platform, env, home }: Machine = { platform: process.platform, env: process.env, home: homedir() },
): Places {
  const paths = platform === 'win32' ? path.win32 : path.posix;
  const from = (variable: string, ...otherwise: string[]): string => {
    const given = env[variable];
    const base = given !== undefined && paths.isAbsolute(given) ? given : paths.join(home, ...otherwise);
    return paths.join(base, FOLDER_NAME);
  };
  const own = env['STICKWRIGHT_HOME'];
  if (own !== undefined && own !== '') return placesIn(paths, paths.resolve(own), paths.resolve(own));
  if (platform === 'win32')
    return placesIn(paths, from('LOCALAPPDATA', 'AppData', 'Local'), from('APPDATA', 'AppData', 'Roaming'));
  if (platform === 'darwin') {
    const support = paths.join(home, 'Library', 'Application Support', FOLDER_NAME);
    return placesIn(paths, support, support);
  }
  return {
    ...placesIn(paths, from('XDG_DATA_HOME', '.local', 'share'), ''),
    settings: from('XDG_CONFIG_HOME', '.config'),
  };
}

function placesIn(paths: path.PlatformPath, data: string, settings: string): Places {
  return {
    data,
    settings: paths.join(settings, 'settings'),
    vault: paths.join(data, 'vault'),
    locks: paths.join(data, 'locks'),
  };
}
