/** Where preferences are kept; each shell brings the store that it can use, all of one format and place. */
import type { Result } from '../../../core/result.ts';
import type { Reply, Request } from '../../../shared/contract.ts';

export type Settings = Reply<'settings.read'>;

export interface SettingsPort {
  read(): Settings;
  /** Keeps what is given and leaves the rest. */
  write(part: Request<'settings.write'>): Result<Settings>;
}
