/** Builds the app when a source is newer than what was built; says nothing on standard output. */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';

export const root = path.resolve(import.meta.dirname, '..');
const SOURCES = ['core', 'shared', 'electron', 'renderer', 'build/vite.config.ts', 'package-lock.json'];
const BUILT = ['main/main.js', 'main/local.js', 'main/command-line.js', 'preload/preload.cjs', 'renderer/index.html'];

/** Newest change in a file or, through all its folders, in a folder. */
function newest(place) {
  const stat = statSync(place, { throwIfNoEntry: false });
  if (stat === undefined) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(place).reduce((latest, name) => Math.max(latest, newest(path.join(place, name))), stat.mtimeMs);
}

export function isStale() {
  const built = BUILT.map((name) => path.join(root, 'out', name));
  if (!built.every((file) => existsSync(file))) return true;
  const oldestBuilt = Math.min(...built.map((file) => statSync(file).mtimeMs));
  return SOURCES.some((place) => newest(path.join(root, place)) > oldestBuilt);
}

/** Exit code of the build, 0 when there was nothing to do. Its words go to standard error. */
export function buildIfStale() {
  if (!isStale()) return 0;
  console.error('Building Stickwright …');
  const vite = path.join(root, 'node_modules/vite/bin/vite.js');
  const built = spawnSync(
    process.execPath,
    [vite, 'build', '--app', '-c', 'build/vite.config.ts', '--logLevel', 'warn'],
    {
      cwd: root,
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  );
  if (built.status !== 0) console.error(String(built.stdout) + String(built.stderr));
  return built.status ?? 1;
}
