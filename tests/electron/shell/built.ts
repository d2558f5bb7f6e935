/** The built program, built first where a source is newer. */
import path from 'node:path';

interface Stale {
  readonly root: string;
  readonly buildIfStale: () => number;
}

const staleFile: string = '../../../build/stale.js';
// Plain JavaScript, run before anything is built: it has no types of its own.
const { root, buildIfStale } = (await import(staleFile)) as Stale;

/** Throws where the build fails; its words are on standard error. */
export function ensureBuilt(): void {
  const code = buildIfStale();
  if (code !== 0) throw new Error('The program could not be built; see above.');
}

export const outFile = (name: string): string => path.join(root, 'out', name);
export const projectFile = (name: string): string => path.join(root, name);
