/** What the file system's refusals mean to the user, in one sentence each. */
import path from 'node:path';
import type { Problem } from '../../core/result.ts';

const REASONS: Readonly<Record<string, readonly [code: string, says: string]>> = {
  ENOSPC: ['disk-full', 'the disk is full; free some space and try again.'],
  EDQUOT: ['disk-full', 'your share of the disk is used up; free some space and try again.'],
  EACCES: ['file-no-permission', 'this account has no right to it; change its rights or choose another place.'],
  EPERM: ['file-no-permission', 'this account has no right to it; change its rights or choose another place.'],
  EROFS: ['file-no-permission', 'the disk can only be read; choose another place.'],
  ENOENT: ['file-missing', 'it is not there; check its name and its folder.'],
  EEXIST: ['file-exists', 'there is one of that name already, which is never overwritten; choose another name.'],
  EREADBACK: ['file-changed', 'what the disk gives back is not what it was given; use another disk.'],
  EISDIR: ['file-is-folder', 'it is a folder; give the name of a file.'],
};

/** `doing` begins the sentence, e.g. "write"; codes: those above, else `file-failed`. Only the file's own name is said. */
export function storageProblem(thrown: unknown, doing: 'read' | 'write', file: string): Problem {
  const errno = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
  const words = thrown instanceof Error ? thrown.message : String(thrown);
  const [code, why] = REASONS[errno] ?? ['file-failed', `the system says "${words}"; check the disk and try again.`];
  return { code, says: `${path.basename(file)} could not be ${doing === 'read' ? 'read' : 'written'}: ${why}` };
}
