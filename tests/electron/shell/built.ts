/** The built program, built first where a source is newer; files that run at the same time wait for one build. */
import { tmpdir } from 'node:os';
import path from 'node:path';
import { takeLock, type Taken } from '../../../electron/store/lock-folder.ts';
import { thisOwner } from '../../../electron/store/lock-owner.ts';

interface Stale {
  readonly root: string;
  readonly buildIfStale: () => number;
}

const staleFile: string = '../../../build/stale.js';
// Plain JavaScript, run before anything is built: it has no types of its own.
const { root, buildIfStale } = (await import(staleFile)) as Stale;

const PLACE = path.join(tmpdir(), 'stickwright-building.lock');
const ASK_AGAIN_MILLIS = 500;

/** Throws where the build fails; its words are on standard error. */
export async function ensureBuilt(): Promise<void> {
  const ports = { self: thisOwner(), lost: () => undefined };
  let lock: Taken = await takeLock(PLACE, ports);
  while (!lock.held) {
    await new Promise((resolve) => setTimeout(resolve, ASK_AGAIN_MILLIS));
    lock = await takeLock(PLACE, ports);
  }
  const code = buildIfStale();
  await lock.free();
  if (code !== 0) throw new Error('The program could not be built; see above.');
}

export const outFile = (name: string): string => path.join(root, 'out', name);
export const projectFile = (name: string): string => path.join(root, name);
