/** Files that a command makes: what is there already is replaced only when the person says so, and only by what is whole. */
import { lstatSync, realpathSync, statSync, type BigIntStats } from 'node:fs';
import { rename } from 'node:fs/promises';
import path from 'node:path';
import { done, failed, type Problem, type Result } from '../../../core/result.ts';
import { writeWhole } from '../../store/atomic-file.ts';
import { storageProblem } from '../../store/storage-problem.ts';

/**
 * The refusal where a file would be overwritten, else null. Neither a link nor anything but a file is ever replaced, nor one
 * of the `inputs`, by whatever name.
 */
export function refuseOverwrite(
  file: string,
  force: boolean,
  inputs: readonly (string | undefined)[] = [],
): Problem | null {
  const there = lookAt(() => lstatSync(file, { bigint: true }));
  if (there === null) return null;
  if (there.isSymbolicLink())
    return failed('output-link', `${file} is a link, which is never replaced; give another name.`).problem;
  if (!there.isFile()) return failed('output-no-file', `${file} is no ordinary file; give another name.`).problem;
  const input = inputs.find((one) => one !== undefined && isSame(one, file, there));
  if (input !== undefined)
    return failed('output-is-input', `${file} is what is read here (${input}); give another name for what is made.`)
      .problem;
  if (force) return null;
  return failed('file-exists', `${file} is there already; give another name, or --force to replace it.`).problem;
}

/** Whole or not at all, with the rights that the umask leaves; without `force` a name that was taken meanwhile is refused. */
export async function writeOutput(file: string, content: string | Uint8Array, force: boolean): Promise<Result<void>> {
  const refusal = refuseOverwrite(file, force);
  return refusal === null
    ? writeWhole(file, content, { rights: 'shared', replace: force })
    : { ok: false, problem: refusal };
}

/** A file that grows while a command runs. */
export interface GrowingOutput {
  /** Where it grows: under its own name, or beside the file that it is to replace. */
  readonly at: string;
  /** Puts it in the place of the old one. */
  readonly finish: () => Promise<Result<void>>;
}

export function growingOutput(file: string): GrowingOutput {
  if (!isThere(file)) return { at: file, finish: () => Promise.resolve(done(undefined)) };
  const at = freeName(file);
  return {
    at,
    async finish() {
      const refusal = refuseOverwrite(file, true);
      if (refusal !== null) return { ok: false, problem: refusal };
      try {
        await rename(at, file);
        return done(undefined);
      } catch (thrown) {
        return { ok: false, problem: storageProblem(thrown, 'write', file) };
      }
    },
  };
}

export function isThere(file: string): boolean {
  return lookAt(() => lstatSync(file, { bigint: true })) !== null;
}

/** `NAME.new.ENDING`, or with a number where there is one. */
function freeName(file: string): string {
  const { dir, name, ext } = path.parse(file);
  for (let number = 1; ; number += 1) {
    const free = path.join(dir, `${name}.new${number === 1 ? '' : `-${number}`}${ext}`);
    if (!isThere(free)) return free;
  }
}

function isSame(input: string, file: string, there: BigIntStats): boolean {
  const other = lookAt(() => statSync(input, { bigint: true }));
  if (other === null) return false;
  return (other.dev === there.dev && other.ino === there.ino) || realpathSync(input) === realpathSync(file);
}

/** Null where nothing can be seen: what is wrong with the place shows when it is used. */
function lookAt(look: () => BigIntStats): BigIntStats | null {
  try {
    return look();
  } catch {
    return null;
  }
}
