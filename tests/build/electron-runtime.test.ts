/** The fetching of Electron's runtime: bounded, ended with everything that it started, and remembered. */
import { existsSync, readFileSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../support/temporary-folder.ts';

interface Runtime {
  readonly runInstall: (
    script: string,
    unpacked: string,
    times?: { silent: number; longest?: number },
  ) => Promise<boolean>;
  readonly failedLately: (file: string, version: string, now?: number) => boolean;
  readonly rememberFailure: (file: string, version: string, now?: number) => void;
}

const file: string = '../../build/electron-runtime.js';
const { runInstall, failedLately, rememberFailure } = (await import(file)) as Runtime;

async function script(text: string): Promise<{ folder: string; script: string }> {
  const folder = await temporaryFolder();
  const own = path.join(folder, 'install.mjs');
  await writeFile(own, text);
  return { folder, script: own };
}

const DAY = 86_400_000;

describe('fetching the runtime', () => {
  it('ends a script that hears nothing, with what it started', async () => {
    const { folder, script: hangs } = await script(`
      import { spawn } from 'node:child_process';
      import { writeFileSync } from 'node:fs';
      const child = spawn(process.execPath, ['-e', 'setInterval(() => 0, 1000)'], { stdio: 'ignore' });
      writeFileSync(new URL('child', import.meta.url), String(child.pid));
      setInterval(() => 0, 1000);
    `);
    // The time begins anew with the first byte of this file, and nothing follows it.
    expect(await runInstall(hangs, path.join(folder, 'child'), { silent: 1000 })).toBe(false);
    const pid = Number(readFileSync(path.join(folder, 'child'), 'utf8'));
    await expect.poll(() => isRunning(pid)).toBe(false);
  });

  it('waits as long as bytes come, though not for ever', async () => {
    const { folder, script: trickles } = await script(`
      import { appendFileSync } from 'node:fs';
      import { tmpdir } from 'node:os';
      import path from 'node:path';
      setInterval(() => appendFileSync(path.join(tmpdir(), 'part'), 'x'), 20);
    `);
    const from = performance.now();
    expect(await runInstall(trickles, path.join(folder, 'dist'), { silent: 1500, longest: 3000 })).toBe(false);
    expect(performance.now() - from).toBeGreaterThanOrEqual(3000);
  });

  it('is good where the script ends well, in a folder for downloads that is gone afterwards', async () => {
    const { folder, script: works } = await script(`
      import { mkdirSync, writeFileSync } from 'node:fs';
      import { tmpdir } from 'node:os';
      writeFileSync(new URL('where', import.meta.url), tmpdir());
    `);
    expect(await runInstall(works, path.join(folder, 'dist'))).toBe(true);
    const where = readFileSync(path.join(folder, 'where'), 'utf8');
    expect(path.basename(where)).toMatch(/^stickwright-fetch-/u);
    expect(existsSync(where)).toBe(false);
    const fails = await script('process.exit(1)');
    expect(await runInstall(fails.script, path.join(folder, 'dist'))).toBe(false);
  });

  it('is not tried again for a week after it failed, but for another version', async () => {
    const note = path.join(await temporaryFolder(), 'out', 'fetch.json');
    expect(failedLately(note, '1.0.0', 0)).toBe(false);
    rememberFailure(note, '1.0.0', 100 * DAY);
    expect(failedLately(note, '1.0.0', 100 * DAY)).toBe(true);
    expect(failedLately(note, '1.0.0', 107 * DAY - 1)).toBe(true);
    expect(failedLately(note, '1.0.0', 107 * DAY)).toBe(false);
    expect(failedLately(note, '1.0.1', 101 * DAY)).toBe(false);
    // The clock was set back since: the note is of a day that has not come.
    expect(failedLately(note, '1.0.0', 99 * DAY)).toBe(false);
    await mkdir(path.dirname(note), { recursive: true });
    await writeFile(note, 'half');
    expect(failedLately(note, '1.0.0', 100 * DAY)).toBe(false);
  });
});

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    // A process whose parent was killed too waits for the first process to fetch it.
    return !/\) [ZX] /u.test(readFileSync(`/proc/${pid}/stat`, 'utf8'));
  } catch {
    return false;
  }
}
