/** Folders and files of the program's own: the account's alone, whatever the umask. */
import { chmodSync, mkdirSync } from 'node:fs';
import { chmod, mkdir } from 'node:fs/promises';
import path from 'node:path';

export const OWN_FOLDER = 0o700;
export const OWN_FILE = 0o600;

/** Makes the folder and what leads to it, where it is not there; one that is there stays as it is. */
export async function makeFolder(folder: string): Promise<void> {
  const first = await mkdir(folder, { recursive: true, mode: OWN_FOLDER });
  for (const made of between(first, folder)) await chmod(made, OWN_FOLDER);
}

/** The same for who cannot wait. */
export function makeFolderAtOnce(folder: string): void {
  const first = mkdirSync(folder, { recursive: true, mode: OWN_FOLDER });
  for (const made of between(first, folder)) chmodSync(made, OWN_FOLDER);
}

/** The folders from the first that was made to the last; a system without such rights is left alone. */
function between(first: string | undefined, last: string): string[] {
  if (first === undefined || process.platform === 'win32') return [];
  const inner = path.relative(first, last);
  const names = inner === '' ? [] : inner.split(path.sep);
  return names.reduce((made, name) => [...made, path.join(made.at(-1) ?? first, name)], [first]);
}
