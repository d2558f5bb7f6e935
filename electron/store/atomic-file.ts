/** Small files of the program's own: written whole or not at all, and set aside where they do not parse. */
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { z } from 'zod';
import { done, type Problem, type Result } from '../../core/result.ts';
import { systemDisk, waitingDisk, type Disk } from './disk.ts';
import { setAside } from './set-aside.ts';
import { storageProblem } from './storage-problem.ts';
import { takeSteps, takeStepsAtOnce, wholeSteps, type WholeWish } from './whole-file.ts';

/** What became of reading a file: `setAside` names the new place of one that does not parse. */
export type JsonRead<T> =
  | { readonly kind: 'read'; readonly value: T }
  | { readonly kind: 'missing' }
  | { readonly kind: 'setAside'; readonly file: string; readonly problem: Problem }
  | { readonly kind: 'failed'; readonly problem: Problem };

interface Manner extends Partial<Pick<WholeWish, 'rights' | 'replace'>> {
  readonly disk?: Disk;
}

/**
 * The new content is on the disk, read back and compared, before it takes the old one's name: after a failure the old file is as it
 * was. Files are the account's alone and replace what stands there, unless `manner` says otherwise.
 */
export async function writeWhole(
  file: string,
  content: string | Uint8Array,
  { rights = 'own', replace = true, disk = systemDisk }: Manner = {},
): Promise<Result<void>> {
  try {
    await takeSteps(wholeSteps({ file, bytes: bytesOf(content), rights, replace }, disk));
    return done(undefined);
  } catch (thrown) {
    return { ok: false, problem: storageProblem(thrown, 'write', file) };
  }
}

/** The same for who cannot wait. */
export function writeWholeAtOnce(file: string, content: string | Uint8Array, disk: Disk = waitingDisk): Result<void> {
  try {
    takeStepsAtOnce(wholeSteps({ file, bytes: bytesOf(content), rights: 'own', replace: true }, disk));
    return done(undefined);
  } catch (thrown) {
    return { ok: false, problem: storageProblem(thrown, 'write', file) };
  }
}

function bytesOf(content: string | Uint8Array): Uint8Array {
  return typeof content === 'string' ? Buffer.from(content) : content;
}

export async function readJson<T>(file: string, schema: z.ZodType<T>, now: Date): Promise<JsonRead<T>> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (thrown) {
    const problem = storageProblem(thrown, 'read', file);
    return problem.code === 'file-missing' ? { kind: 'missing' } : { kind: 'failed', problem };
  }
  const parsed = schema.safeParse(parseJson(text));
  if (parsed.success) return { kind: 'read', value: parsed.data };
  try {
    const aside = setAside(file, now);
    return { kind: 'setAside', file: aside, problem: setAsideProblem(file, aside) };
  } catch (thrown) {
    return { kind: 'failed', problem: storageProblem(thrown, 'write', file) };
  }
}

/** What a user is told of a file that was set aside. */
export function setAsideProblem(file: string, aside: string): Problem {
  const [name, asideName] = [path.basename(file), path.basename(aside)];
  return {
    code: 'file-set-aside',
    says: `${name} could not be understood and was set aside as ${asideName} in the same folder; look there if you miss something.`,
  };
}

/** Undefined, which no schema takes, where the text is no JSON. */
function parseJson(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}
