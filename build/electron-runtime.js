/** Electron's runtime: where it is, and how it is fetched once, without keeping anybody waiting for a network that is silent. */
import { spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** No byte for so long, and nothing is fetched. */
const SILENT_MILLIS = 10_000;
/** A network that trickles is no better. */
const LONGEST_MILLIS = 600_000;
const LOOK_MILLIS = 250;
const AGAIN_AFTER_MILLIS = 7 * 86_400_000;

export function electronFolder() {
  try {
    return path.dirname(createRequire(import.meta.url).resolve('electron/package.json'));
  } catch {
    return undefined; // Installed without development packages: the local shell needs none of them.
  }
}

/** The runtime's path, or undefined; looks only, for importing 'electron' itself would start a download. */
export function electronBinary() {
  const folder = electronFolder();
  if (folder === undefined) return undefined;
  const pathFile = path.join(folder, 'path.txt');
  const name = existsSync(pathFile) ? readFileSync(pathFile, 'utf8').trim() : 'electron';
  const file = path.join(process.env.ELECTRON_OVERRIDE_DIST_PATH ?? path.join(folder, 'dist'), name);
  return existsSync(file) ? file : undefined;
}

export function electronVersion(folder = electronFolder()) {
  return JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')).version;
}

/** True where this version could not be fetched within the last week. A date of the time to come counts for nothing. */
export function failedLately(file, version, now = Date.now()) {
  try {
    const last = JSON.parse(readFileSync(file, 'utf8'));
    return last.version === version && now - last.at >= 0 && now - last.at < AGAIN_AFTER_MILLIS;
  } catch {
    return false; // Never failed, or the note is damaged: one try more does no harm.
  }
}

/** Keeps in mind that this version could not be fetched. */
export function rememberFailure(file, version, now = Date.now()) {
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(file, `${JSON.stringify({ version, at: now })}\n`);
}

/**
 * Runs the package's own script; true where it ended well. Bytes are looked for in the folder that it downloads to and in
 * the one that it unpacks to; a script that stays silent is ended with everything that it started.
 */
export async function runInstall(script, unpacked, { silent = SILENT_MILLIS, longest = LONGEST_MILLIS } = {}) {
  const folder = mkdtempSync(path.join(tmpdir(), 'stickwright-fetch-'));
  const child = spawn(process.execPath, [script], {
    stdio: 'ignore',
    detached: process.platform !== 'win32',
    env: { ...process.env, TMPDIR: folder, TEMP: folder, TMP: folder },
  });
  const ended = new Promise((resolve) => {
    child.once('error', () => resolve(false));
    child.once('close', (code) => resolve(code === 0));
  });
  const from = performance.now();
  let [bytes, heardAt] = [-1, from];
  const timer = setInterval(
    () => {
      const now = performance.now();
      const has = bytesIn(folder) + bytesIn(unpacked);
      if (has !== bytes) [bytes, heardAt] = [has, now];
      if (now - heardAt >= silent || now - from >= longest) endGroup(child);
    },
    Math.min(LOOK_MILLIS, silent),
  );
  const endToo = () => endGroup(child);
  process.once('exit', endToo);
  const good = await ended;
  process.off('exit', endToo);
  clearInterval(timer);
  rmSync(folder, { recursive: true, force: true });
  return good;
}

function endGroup(child) {
  if (process.platform === 'win32') {
    spawnSync('taskkill', ['/pid', String(child.pid), '/T', '/F'], { stdio: 'ignore' });
    return;
  }
  try {
    process.kill(-child.pid, 'SIGKILL');
  } catch {
    // Ended by itself meanwhile.
  }
}

function bytesIn(place) {
  const stat = statSync(place, { throwIfNoEntry: false });
  if (stat === undefined) return 0;
  if (!stat.isDirectory()) return stat.size;
  return namesIn(place).reduce((sum, name) => sum + bytesIn(path.join(place, name)), 0);
}

function namesIn(folder) {
  try {
    return readdirSync(folder);
  } catch {
    return []; // Deleted since it was seen.
  }
}
