import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, existsSync, openSync } from 'node:fs';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ensureBuilt, outFile } from '../electron/shell/built.ts';

let folder: string;

beforeAll(async () => {
  await ensureBuilt();
  folder = await mkdtemp(path.join(tmpdir(), 'stickwright-pipe-'));
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

function start(...args: string[]) {
  const child = spawn(process.execPath, [outFile('main/command-line.js'), ...args], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let stderr = '';
  child.stderr.on('data', (part: Buffer) => (stderr += part.toString()));
  const ended = new Promise<{ code: number | null; stderr: string }>((resolve) => {
    child.on('close', (code) => resolve({ code, stderr }));
  });
  return { child, ended, said: () => stderr };
}

describe('what happens from outside', () => {
  it('ends quietly with 0 when the reader closes the pipe', async () => {
    const { child, ended } = start('watch', '--demo', 'healthy');
    child.stdout.once('data', () => child.stdout.destroy());
    expect(await ended).toEqual({ code: 0, stderr: '' });
  });

  it.skipIf(process.platform !== 'linux').each([
    ['watch', '--demo', 'healthy', '--seconds', '1'],
    ['self-check', '--help'],
  ])('says in one sentence that %s cannot write its result', async (...args) => {
    const full = openSync('/dev/full', 'w');
    const child = spawn(process.execPath, [outFile('main/command-line.js'), ...args], {
      stdio: ['ignore', full, 'pipe'],
    });
    closeSync(full);
    let stderr = '';
    child.stderr?.on('data', (part: Buffer) => (stderr += part.toString()));
    const [code] = (await once(child, 'close')) as [number];
    expect([code, stderr]).toEqual([1, expect.stringMatching(/^stickwright: [^\n]+\.\n$/u)]);
    expect(stderr).toContain('the disk is full');
  });

  it.skipIf(process.platform !== 'linux')('ends as it would where there is nobody to hear words', async () => {
    const full = openSync('/dev/full', 'w');
    const args = ['measure', path.join(folder, 'missing.padlog')];
    const child = spawn(process.execPath, [outFile('main/command-line.js'), ...args], {
      stdio: ['ignore', 'ignore', full],
    });
    closeSync(full);
    expect(await once(child, 'close')).toEqual([1, null]);
  });

  it('stops watching on an interrupt, with 0', async () => {
    const { child, ended } = start('watch', '--demo', 'healthy');
    child.stdout.once('data', () => child.kill('SIGINT'));
    child.stdout.resume();
    expect(await ended).toEqual({ code: 0, stderr: '' });
  });

  it('keeps what a survey had taken when it is interrupted', async () => {
    const out = path.join(folder, 'interrupted.padlog');
    const { child, ended, said } = start('survey', '--demo', 'healthy', '--out', out, '--releases', '200');
    child.stdout.resume();
    await expect.poll(() => said().includes('left stick: rest') && existsSync(out), { timeout: 20_000 }).toBe(true);
    child.kill('SIGINT');
    const { code, stderr } = await ended;
    expect(code).toBe(1);
    expect(stderr).toContain(`what was taken is kept in ${out}`);
    const text = await readFile(out, 'utf8');
    expect(text).toMatch(/"edge":"end"\}\]\n\["m",\d+,"end",\{\}\]\n$/u);
  });

  it('leaves the log that was to be replaced as it is, and what was taken beside it', async () => {
    const out = path.join(folder, 'forced.padlog');
    await writeFile(out, 'the old log');
    const args = ['--demo', 'healthy', '--out', out, '--force', '--releases', '200'];
    const { child, ended, said } = start('survey', ...args);
    child.stdout.resume();
    await expect.poll(() => said().includes('left stick: rest'), { timeout: 20_000 }).toBe(true);
    child.kill('SIGINT');
    const { code, stderr } = await ended;
    const kept = path.join(folder, 'forced.new.padlog');
    expect(code).toBe(1);
    expect(stderr).toContain(`${out} is as it was; what was taken is kept in ${kept}.`);
    expect(await readFile(out, 'utf8')).toBe('the old log');
    expect((await readFile(kept, 'utf8')).startsWith('{"kind":"stickwright-report-log"')).toBe(true);
  });
});
