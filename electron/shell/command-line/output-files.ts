/** Files that a command makes: a file that is there already is replaced only when the person says so. */
import { existsSync } from 'node:fs';
import { failed, type Problem } from '../../../core/result.ts';

/** The refusal where a file would be overwritten, else null. */
export function refuseOverwrite(file: string, force: boolean): Problem | null {
  if (force || !existsSync(file)) return null;
  return failed('file-exists', `${file} is there already; give another name, or --force to replace it.`).problem;
}
