/** Takes from others what rights an older version left them on what the program keeps; nothing else is touched. */
import { chmod, lstat, readdir, unlink } from 'node:fs/promises';
import path from 'node:path';
import type { Problem } from '../../core/result.ts';
import { OWN_FILE, OWN_FOLDER } from './own-folder.ts';
import { FOLDER_NAME, type Places } from './places.ts';
import { isUnfinished } from './whole-file.ts';

/** All that stands in the data folder. */
const NAMES: readonly string[] = [
  'surveys',
  'incoming',
  'vault',
  'locks',
  'settings',
  'maps',
  'protocols',
  'journals',
  'confirmations',
  'demos',
  'writable-pads.json',
];
const OTHERS = 0o077;
const STALE_MILLIS = 86_400_000;

/**
 * A folder of the program's own name holds nothing else. Of one that a person chose only what the program makes is changed, and the
 * folder itself where nothing else is in it. Links are neither changed nor followed. What a program that was killed left unfinished
 * for a day goes. Answers with a sentence where something could not be changed.
 */
export async function tighten({ data, settings, vault, locks }: Places): Promise<Problem | null> {
  if (process.platform === 'win32') return null;
  const failed: string[] = [];
  const names = await readdir(data).catch(() => []);
  const isOurs = (name: string): boolean => NAMES.some((own) => name.startsWith(own)) || isUnfinished(name);
  const own = names.filter((name) => isNamed(data) || isOurs(name));
  if (names.length > 0 && own.length === names.length) await tightenOne(data, failed);
  if (isNamed(path.dirname(settings))) await tightenOne(path.dirname(settings), failed);
  const places = [...own.map((name) => path.join(data, name)), settings, vault, locks];
  for (const place of new Set(places)) await tightenAll(place, failed);
  const [first] = failed;
  return first === undefined ? null : { code: 'folder-open', says: sayOpen(first, failed.length - 1) };
}

function isNamed(folder: string): boolean {
  return path.basename(folder) === FOLDER_NAME;
}

function sayOpen(first: string, further: number): string {
  const more = further === 0 ? '' : ` and ${further} more`;
  return `Other accounts of this machine may read ${first}${more}, and the rights could not be changed; change them yourself.`;
}

async function tightenAll(place: string, failed: string[]): Promise<void> {
  const isFolder = await tightenOne(place, failed);
  if (!isFolder) return;
  for (const name of await readdir(place).catch(() => [])) await tightenAll(path.join(place, name), failed);
}

/** True for a folder. */
async function tightenOne(place: string, failed: string[]): Promise<boolean> {
  try {
    const found = await lstat(place);
    const [isFolder, isFile] = [found.isDirectory(), found.isFile()];
    if (isFile && isUnfinished(path.basename(place)) && found.mtimeMs < Date.now() - STALE_MILLIS) await unlink(place);
    else if ((isFolder || isFile) && (found.mode & OTHERS) !== 0) await chmod(place, isFolder ? OWN_FOLDER : OWN_FILE);
    return isFolder;
  } catch (thrown) {
    // What went away meanwhile is nobody's.
    if (!(thrown instanceof Error && 'code' in thrown && thrown.code === 'ENOENT')) failed.push(place);
    return false;
  }
}
