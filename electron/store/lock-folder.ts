/**
 * A lock as a folder that holds one file, named after the holder's own chance word. Taking is moving a filled folder to
 * the lock's place, which no system does where a filled one stands; freeing, or taking over from a holder that ended, is
 * deleting the file of that very word. So two that take over at once cannot delete each other's, and no clock is asked.
 */
import { randomBytes } from 'node:crypto';
import { mkdir, readdir, readFile, rename, rm, rmdir, stat, unlink, utimes, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { lifeOf, ownerSchema, type Owner } from './lock-owner.ts';

/** The holder renews its file so often, and looks whether it is still there. */
const BEAT_MILLIS = 1000;
/** A holder that cannot be looked at is taken for ended when its file was not renewed for this long, by our own clock. */
const WATCH_MILLIS = 6000;
const LOOK_MILLIS = 200;
/** Others can come and go between two looks; so often in a row is no chance any more. */
const MOST_TRIES = 50;

export interface LockPorts {
  readonly self: Owner;
  /** Called once when the lock turns out to be gone or another's, and never after it was freed. */
  readonly lost: () => void;
  /** True where a file is renewed while it is watched. */
  readonly isRenewed?: (file: string) => Promise<boolean>;
  readonly beatMillis?: number;
}

export type Taken =
  | { readonly held: true; readonly free: () => Promise<void> }
  /** `owner` is null where the holder's word cannot be read. */
  | { readonly held: false; readonly owner: Owner | null };

/** `place` is the lock's own path; its folder is there. Throws the file system's errors. */
export async function takeLock(place: string, ports: LockPorts): Promise<Taken> {
  const name = `${randomBytes(9).toString('hex')}.json`;
  const prepared = `${place}.${name.slice(0, 12)}`;
  await mkdir(prepared, { mode: 0o700 });
  try {
    await writeFile(path.join(prepared, name), JSON.stringify(ports.self), { mode: 0o600 });
    const owner = await move(prepared, place, ports);
    return owner === 'moved' ? hold(place, name, ports) : { held: false, owner };
  } finally {
    await rm(prepared, { recursive: true, force: true });
  }
}

/** Moves the prepared folder to its place as soon as nobody who runs stands there. */
async function move(prepared: string, place: string, ports: LockPorts): Promise<'moved' | Owner | null> {
  let refused: unknown = null;
  for (let tries = 0; tries < MOST_TRIES; tries += 1) {
    try {
      await rename(prepared, place);
      return 'moved';
    } catch (thrown) {
      refused = thrown;
    }
    const holder = await holderOf(place);
    if (holder === 'nobody') continue;
    if (await isHeld(holder, ports)) return holder.owner;
    await remove(place, holder.file);
  }
  throw refused;
}

interface Holder {
  readonly file: string;
  readonly owner: Owner | null;
}

async function holderOf(place: string): Promise<Holder | 'nobody'> {
  const [name] = await readdir(place).catch(missing([]));
  if (name === undefined) {
    // Somewhere a folder is moved only to where none stands, not even an empty one.
    await rmdir(place).catch(missing(undefined, 'ENOTEMPTY', 'EEXIST'));
    return 'nobody';
  }
  const file = path.join(place, name);
  const text = await readFile(file, 'utf8').catch(missing(null));
  return text === null ? 'nobody' : { file, owner: parseOwner(text) };
}

async function isHeld({ file, owner }: Holder, { self, isRenewed = watchFile }: LockPorts): Promise<boolean> {
  const life = owner === null ? 'unknown' : lifeOf(owner, self);
  return life === 'unknown' ? isRenewed(file) : life === 'running';
}

function hold(place: string, name: string, ports: LockPorts): Taken {
  const file = path.join(place, name);
  let isOurs = true;
  const timer = setInterval(() => void beat(), ports.beatMillis ?? BEAT_MILLIS);
  timer.unref();
  const beat = async (): Promise<void> => {
    try {
      const now = new Date();
      await utimes(file, now, now);
    } catch (thrown) {
      // Anything else than "not there" says nothing of who has the lock; the next beat asks again.
      if (isOurs && codeOf(thrown) === 'ENOENT') {
        isOurs = false;
        clearInterval(timer);
        ports.lost();
      }
    }
  };
  const free = async (): Promise<void> => {
    isOurs = false;
    clearInterval(timer);
    // A lock that cannot be deleted counts for nothing as soon as this process ends.
    await remove(place, file).catch(() => undefined);
  };
  return { held: true, free };
}

/** Deletes one holder's file, and the folder where it then is empty; another's is never touched. */
async function remove(place: string, file: string): Promise<void> {
  await unlink(file).catch(missing(undefined));
  await rmdir(place).catch(missing(undefined, 'ENOTEMPTY', 'EEXIST'));
}

async function watchFile(file: string): Promise<boolean> {
  const renewedAt = async (): Promise<number | null> => (await stat(file).catch(missing(null)))?.mtimeMs ?? null;
  const first = await renewedAt();
  const until = performance.now() + WATCH_MILLIS;
  while (performance.now() < until) {
    await new Promise((resolve) => setTimeout(resolve, LOOK_MILLIS));
    const now = await renewedAt();
    if (now === null) return false;
    if (now !== first) return true;
  }
  return false;
}

function parseOwner(text: string): Owner | null {
  try {
    return ownerSchema.parse(JSON.parse(text));
  } catch {
    return null; // Cut off by a loss of power, or changed by hand: who it was is not known.
  }
}

/** What stands for something that is not there; other errors go on. */
function missing<T>(value: T, ...alsoFine: readonly string[]): (thrown: unknown) => T {
  return (thrown) => {
    if (['ENOENT', ...alsoFine].includes(codeOf(thrown))) return value;
    throw thrown;
  };
}

function codeOf(thrown: unknown): string {
  return thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
}
