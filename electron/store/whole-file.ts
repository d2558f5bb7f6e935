/**
 * Writes a file whole: beside it under a name of its own, down to the disk, read back and compared by SHA-256, and only then under its
 * name. Whatever fails before that leaves what was there as it was and nothing beside it. Throws what the file system
 * throws, and `EREADBACK` where the disk gives back other bytes than it was given.
 */
import { randomBytes } from 'node:crypto';
import path from 'node:path';
import type { Disk, NewFile, Soon } from './disk.ts';
import { OWN_FILE } from './own-folder.ts';
import { sha256Of } from './sha256.ts';

export interface WholeWish {
  readonly file: string;
  readonly bytes: Uint8Array;
  /** Rights of a new file: the account's alone, or what the umask leaves; then a file that is replaced keeps its own. */
  readonly rights: 'own' | 'shared';
  /** False: a name that is taken is refused with EEXIST, even if it was taken while the bytes were written. */
  readonly replace: boolean;
}

export type Steps = Generator<unknown, void>;

const SHARED = 0o666;
const RIGHTS = 0o777;
/** What a file is called until it is whole. */
const UNFINISHED = /^\.[0-9a-f]{16}\.part$/u;
/** What file systems say that know no second name for a file, or no syncing of a folder. */
const CANNOT: ReadonlySet<string> = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EINVAL', 'EACCES', 'EISDIR']);

/** True for a name that only a program which was killed leaves behind. */
export function isUnfinished(name: string): boolean {
  return UNFINISHED.test(name);
}

/** An error with the file system's way of naming it. */
export function systemError(code: string, words: string): Error {
  return Object.assign(new Error(words), { code });
}

export function* wholeSteps({ file, bytes, rights, replace }: WholeWish, disk: Disk): Steps {
  const there = replace ? yield* find(file, disk) : null;
  const target = there?.path ?? file;
  const beside = path.join(path.dirname(target), `.${randomBytes(8).toString('hex')}.part`);
  const opened = yield* ask(disk.create(beside, rights === 'own' ? OWN_FILE : SHARED));
  try {
    yield* fill(opened, bytes, rights === 'shared' && there !== null ? there.mode & RIGHTS : null);
    yield* prove(beside, bytes, disk);
    if (replace) yield* ask(disk.rename(beside, target));
    else yield* nameNew(beside, target, disk);
  } catch (thrown) {
    // Why it failed is what is told; it is gone already where only its old name was left.
    yield* leave(() => disk.remove(beside));
    throw thrown;
  }
  yield* keepName(path.dirname(target), disk);
}

function* fill(opened: NewFile, bytes: Uint8Array, mode: number | null): Steps {
  try {
    if (mode !== null) yield* ask(opened.chmod(mode));
    for (let taken = 0; taken < bytes.length;) {
      const more = yield* ask(opened.write(bytes.subarray(taken)));
      if (more === 0) throw systemError('ENOSPC', 'the disk took no more');
      taken += more;
    }
    yield* ask(opened.sync());
  } catch (thrown) {
    yield* leave(() => opened.close());
    throw thrown;
  }
  yield* ask(opened.close());
}

function* prove(file: string, bytes: Uint8Array, disk: Disk): Steps {
  const read = yield* ask(disk.read(file));
  if (read.length < bytes.length) throw systemError('ENOSPC', 'the disk kept only a part');
  if (sha256Of(read) !== sha256Of(bytes)) throw systemError('EREADBACK', 'the disk gives back other bytes');
}

/** Takes the name only where nobody has it. */
function* nameNew(beside: string, target: string, disk: Disk): Steps {
  try {
    yield* ask(disk.link(beside, target));
  } catch (thrown) {
    if (!CANNOT.has(codeOf(thrown))) throw thrown;
    // Without second names: the name is taken by an empty file first, which is nobody else's to replace.
    const held = yield* ask(disk.create(target, SHARED));
    yield* ask(held.close());
    try {
      yield* ask(disk.rename(beside, target));
    } catch (refused) {
      yield* leave(() => disk.remove(target));
      throw refused;
    }
    return;
  }
  // The file stands under its name: what came of the other one changes nothing about that.
  yield* leave(() => disk.remove(beside));
}

/** The new name outlives a loss of power too, where the system lets a folder be synced. */
function* keepName(folder: string, disk: Disk): Steps {
  if (process.platform === 'win32') return;
  try {
    yield* ask(disk.syncFolder(folder));
  } catch (thrown) {
    if (!CANNOT.has(codeOf(thrown))) throw thrown;
  }
}

function* find(file: string, disk: Disk): Generator<unknown, { readonly path: string; readonly mode: number } | null> {
  try {
    return yield* ask(disk.find(file));
  } catch (thrown) {
    if (codeOf(thrown) === 'ENOENT') return null;
    throw thrown;
  }
}

/** Tidying up after a failure that is told already. */
function* leave(step: () => Soon<void>): Steps {
  try {
    yield* ask(step());
  } catch {
    // The first failure is the one to tell.
  }
}

function* ask<T>(asked: Soon<T>): Generator<unknown, T> {
  return (yield asked) as T;
}

function codeOf(thrown: unknown): string {
  return thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
}

/** Takes the steps one after the other, waiting for each. */
export async function takeSteps(steps: Steps): Promise<void> {
  let next = steps.next();
  while (next.done !== true) {
    let answer: unknown;
    try {
      answer = await next.value;
    } catch (thrown) {
      next = steps.throw(thrown);
      continue;
    }
    next = steps.next(answer);
  }
}

/** Takes the steps of a disk that makes nobody wait. */
export function takeStepsAtOnce(steps: Steps): void {
  let next = steps.next();
  while (next.done !== true) next = steps.next(next.value);
}
