/** Saves what the page hands over where the user says, by the system's own dialogue; the page never names a place. */
import { dialog, type BrowserWindow } from 'electron';
import { done, failed, type Result } from '../../../core/result.ts';
import { writeWhole } from '../../store/atomic-file.ts';

/** More than any log, image or picture of this program has; what is larger is a fault of the page. */
export const MOST_SAVED_BYTES = 536_870_912;
const LONGEST_NAME = 120;

export interface Saved {
  /** False where the user thought better of it. */
  readonly saved: boolean;
}

/** `name` is offered, and nothing else of it is used. */
export async function saveFile(window: BrowserWindow, name: unknown, bytes: unknown): Promise<Result<Saved>> {
  if (typeof name !== 'string' || !(bytes instanceof Uint8Array))
    return failed('save-invalid', 'The page asked to save something that is no file; reload the window.');
  if (bytes.byteLength > MOST_SAVED_BYTES)
    return failed('save-too-large', 'This file is larger than 512 MiB and was not saved; save a part of it.');
  const { canceled, filePath } = await dialog.showSaveDialog(window, { defaultPath: plainName(name) });
  if (canceled || filePath === '') return done({ saved: false });
  const written = await writeWhole(filePath, bytes, { rights: 'shared' });
  return written.ok ? done({ saved: true }) : written;
}

/** A file's name alone, good on every system: no folder, no hidden file, no sign with a meaning of its own. */
export function plainName(name: string): string {
  const signs = Array.from(name, (sign) => (isPlain(sign) ? sign : '-')).join('');
  const bare = signs.replace(/^[. -]+|[. ]+$/gu, '').slice(-LONGEST_NAME);
  if (bare === '') return 'file';
  // Windows keeps these names for its devices, with any ending.
  return /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/iu.test(bare) ? `file-${bare}` : bare;
}

function isPlain(sign: string): boolean {
  return sign >= ' ' && sign !== '\u007f' && !'<>:"/\\|?*'.includes(sign);
}
