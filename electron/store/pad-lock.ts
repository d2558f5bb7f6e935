/** One program at a time captures from a pad or writes to it, whichever shell it is. */
import { createHash } from 'node:crypto';
import { mkdir, readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { lock, type LockOptions } from 'proper-lockfile';
import { z } from 'zod';
import type { PadIdentity } from '../../core/pad/identity.ts';
import { done, failed, type Result } from '../../core/result.ts';
import type { PadLock } from '../bench/pad-lock-port.ts';
import { writeWhole } from './atomic-file.ts';
import { findPlaces } from './places.ts';
import { storageProblem } from './storage-problem.ts';

const ownerSchema = z.object({ pid: z.number().int().positive(), since: z.string() });
type Owner = z.infer<typeof ownerSchema>;

/** The holder renews its lock every second; one that has not been renewed for ten is anyone's. */
const HELD: LockOptions = {
  realpath: false,
  update: 1000,
  stale: 10_000,
  // After a sleep of the machine another program may have taken the pad; the capture was ended before the sleep.
  onCompromised: () => undefined,
};
/** Where the holder's process is known to have ended, two seconds without renewal are enough (some disks round times to a second). */
const ORPHANED: LockOptions = { ...HELD, stale: 2000, retries: { retries: 8, factor: 1, minTimeout: 500 } };

/** `pad-busy` names the process that has the pad, where it is known. */
export function createPadLock(folder: string = findPlaces().locks): PadLock {
  return {
    async take(pad, lockKey) {
      const base = path.join(folder, createHash('sha256').update(lockKey).digest('hex').slice(0, 24));
      const ownerFile = `${base}.json`;
      try {
        await mkdir(folder, { recursive: true });
        const release = await acquire(base, ownerFile);
        if (release === null) return busy(pad, await readOwner(ownerFile));
        const owner: Owner = { pid: process.pid, since: new Date().toISOString() };
        // The lock holds without it; only the name would be missing in what another program says.
        await writeWhole(ownerFile, JSON.stringify(owner));
        return done(() => giveFree(release, ownerFile));
      } catch (thrown) {
        return { ok: false, problem: storageProblem(thrown, 'write', base) };
      }
    },
  };
}

/** Null where somebody has it. */
async function acquire(base: string, ownerFile: string): Promise<(() => Promise<void>) | null> {
  const release = await unlessHeld(base, HELD);
  if (release !== null) return release;
  const owner = await readOwner(ownerFile);
  return owner === null || isRunning(owner.pid) ? null : unlessHeld(base, ORPHANED);
}

async function unlessHeld(base: string, options: LockOptions): Promise<(() => Promise<void>) | null> {
  try {
    return await lock(base, options);
  } catch (thrown) {
    if (thrown instanceof Error && 'code' in thrown && thrown.code === 'ELOCKED') return null;
    throw thrown;
  }
}

async function giveFree(release: () => Promise<void>, ownerFile: string): Promise<void> {
  await rm(ownerFile, { force: true });
  try {
    await release();
  } catch {
    // Released already, or taken over by another program: either way it is not ours any more.
  }
}

async function readOwner(ownerFile: string): Promise<Owner | null> {
  try {
    return ownerSchema.parse(JSON.parse(await readFile(ownerFile, 'utf8')));
  } catch {
    return null; // Nobody wrote it yet, or it is damaged: then the holder's name is not known.
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (thrown) {
    // EPERM: it runs under another account.
    return thrown instanceof Error && 'code' in thrown && thrown.code === 'EPERM';
  }
}

function busy(pad: PadIdentity, owner: Owner | null): Result<never> {
  if (owner?.pid === process.pid)
    return failed(
      'pad-busy',
      `${pad.product} is in use in this program already; end its capture or memory session first.`,
    );
  const who = owner === null ? 'another program on this machine' : `process ${owner.pid}, since ${owner.since}`;
  return failed('pad-busy', `${pad.product} is in use by ${who}; end its capture or close it, then try again.`);
}
