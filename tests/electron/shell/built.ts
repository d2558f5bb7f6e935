/** The built program, built first where a source is newer; files that run at the same time wait for one build. */
import { tmpdir } from 'node:os';
import path from 'node:path';
import { lock } from 'proper-lockfile';

interface Stale {
  readonly root: string;
  readonly buildIfStale: () => number;
}

const staleFile: string = '../../../build/stale.js';
// Plain JavaScript, run before anything is built: it has no types of its own.
const { root, buildIfStale } = (await import(staleFile)) as Stale;

const WAIT = {
  lockfilePath: path.join(tmpdir(), 'stickwright-build.lock'),
  retries: { retries: 240, factor: 1, minTimeout: 500 },
  stale: 120_000,
};

/** Throws where the build fails; its words are on standard error. */
export async function ensureBuilt(): Promise<void> {
  const release = await lock(path.join(root, 'build'), WAIT);
  const code = buildIfStale();
  await release();
  if (code !== 0) throw new Error('The program could not be built; see above.');
}

export const outFile = (name: string): string => path.join(root, 'out', name);
export const projectFile = (name: string): string => path.join(root, name);
