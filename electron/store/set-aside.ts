/** A file that does not parse is put out of the way under a name of its own: never overwritten, never deleted. */
import { existsSync, renameSync } from 'node:fs';

/** Renames the file with the date and time and answers with its new path. Throws what the file system throws. */
export function setAside(file: string, now: Date): string {
  const stamp = now.toISOString().slice(0, 19).replaceAll(/[:T]/gu, '-');
  let aside = `${file}.${stamp}.set-aside`;
  for (let number = 2; existsSync(aside); number += 1) aside = `${file}.${stamp}-${number}.set-aside`;
  renameSync(file, aside);
  return aside;
}
