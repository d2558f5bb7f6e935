/**
 * Every command that writes, on a real disk with next to no room: what is said to be done is whole, and what is not leaves
 * everything as it was.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { appendFileSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { KeptSettings } from '../../electron/store/settings.ts';
import { ensureBuilt, outFile } from '../electron/shell/built.ts';
import { runNode, type Ran } from '../electron/shell/run-node.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { wished } from './memory-commands.ts';

const DEMO = ['--demo', 'loose'] as const;
const SENTENCE = /^stickwright: [^\n]+\.$/mu;

/** A disk of a mebibyte in memory; null where this account may not mount one. */
function mountSmall(folder: string): boolean {
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1024k,mode=0700', 'tmpfs', folder], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

/** Leaves so many KiB; the disk gives room by pages of four. */
function fill(disk: string, free: number): void {
  const filler = path.join(disk, 'filler');
  writeFileSync(filler, '');
  try {
    for (;;) appendFileSync(filler, Buffer.alloc(4096));
  } catch {
    const { length } = readFileSync(filler);
    truncateSync(filler, Math.max(0, length - 1024 * free));
  }
}

/** What stands in the folder and below, by its digest; without the filler. */
function look(folder: string): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  const digests = files.map(({ parentPath, name }) => {
    const file = path.join(parentPath, name);
    return [path.relative(folder, file), createHash('sha256').update(readFileSync(file)).digest('hex')] as const;
  });
  return Object.fromEntries(digests.filter(([name]) => name !== 'filler'));
}

const canMount = process.platform === 'linux' && process.getuid?.() === 0;
const reason = 'SKIPPED LOUDLY: no disk can be mounted here, so nothing was tried on a full one.';
if (!canMount) console.warn(reason);

describe.skipIf(!canMount)(canMount ? 'a disk that is full' : reason, () => {
  let disk: string;
  let safe: string;
  const run = (...args: string[]): Promise<Ran> =>
    runNode([outFile('main/command-line.js'), ...args], { env: { STICKWRIGHT_HOME: path.join(disk, 'home') } });

  beforeAll(() => ensureBuilt(), 180_000);

  async function prepare(context: { skip: (why: string) => void }): Promise<void> {
    [disk, safe] = [await temporaryFolder(), await temporaryFolder()];
    if (!mountSmall(disk)) context.skip(reason);
    onTestFinished(() => void execFileSync('umount', ['-l', disk]));
    await mkdir(path.join(disk, 'home'));
    writeFileSync(
      path.join(safe, 'mapping.json'),
      JSON.stringify({ kind: 'stickwright-mapping', version: 1, sticks: wished }),
    );
  }

  it.for([4, 24, 100])('with %i KiB left cuts nothing off', { timeout: 300_000 }, async (free, context) => {
    await prepare(context);
    const from = (name: string): string => path.join(safe, name);
    const to = (name: string): string => path.join(disk, name);
    const survey = ['--releases', '1', '--turns', '1', '--stick', 'left', '--steps', 'rest,rim'];
    const enough = ['--releases', '4', '--turns', '3', '--stick', 'left', '--steps', 'rest,rim'];
    expect((await run('survey', ...DEMO, '--out', from('a.padlog'), ...enough)).code).toBe(0);
    expect((await run('memory', 'read', ...DEMO, '--out', from('pad.bin'))).code).toBe(0);
    const layer = ['--layer', 'factory', '--mapping', from('mapping.json')];
    expect((await run('image', 'plan', from('pad.bin'), ...layer, '--out', from('patch.json'))).code).toBe(0);
    expect((await run('memory', 'allow', 'on', ...DEMO)).code).toBe(0);
    const shown = await run('memory', 'write', from('patch.json'), ...DEMO, '--json');
    const { confirm } = JSON.parse(shown.stdout) as { confirm: string };
    await run('image', 'apply', from('pad.bin'), from('patch.json'), '--out', from('planned.bin'));
    for (const name of ['a.bin', 'b.json', 'c.bin', 'd.json', 'e.padlog']) writeFileSync(to(name), `old ${name}`);
    new KeptSettings(to('home/settings'), () => new Date()).write({ theme: 'light' });
    const cut = (name: string): string => readFileSync(from(name)).toString('base64');
    const size = (name: string): number => readFileSync(from(name)).length;
    fill(disk, free);

    const writes: [string, string[], () => void][] = [
      ['a.bin', ['memory', 'read', ...DEMO], () => expect(readFileSync(to('a.bin')).length).toBe(size('pad.bin'))],
      [
        'b.json',
        ['image', 'plan', from('pad.bin'), ...layer],
        () => void JSON.parse(readFileSync(to('b.json'), 'utf8')),
      ],
      [
        'c.bin',
        ['image', 'apply', from('pad.bin'), from('patch.json')],
        () => expect(readFileSync(to('c.bin')).toString('base64')).toBe(cut('planned.bin')),
      ],
      ['d.json', ['propose', from('a.padlog')], () => void JSON.parse(readFileSync(to('d.json'), 'utf8'))],
      [
        'e.padlog',
        ['survey', ...DEMO, ...survey],
        () => expect(readFileSync(to('e.padlog'), 'utf8')).toMatch(/,"end",\{\}\]\n$/u),
      ],
    ];
    for (const [name, args, isWhole] of writes) {
      const ran = await run(...args, '--out', to(name), '--force');
      if (ran.code === 0) isWhole();
      else {
        expect([ran.code, readFileSync(to(name), 'utf8')]).toEqual([1, `old ${name}`]);
        expect(ran.stderr).toMatch(SENTENCE);
        expect(ran.stderr).toContain('disk is full');
        rmSync(to('e.new.padlog'), { force: true });
      }
      expect(Object.keys(look(disk)).filter((one) => one.endsWith('.part'))).toEqual([]);
    }

    const before = look(disk);
    for (const which of ['off', 'on']) {
      const allowed = await run('memory', 'allow', which, ...DEMO);
      if (allowed.code !== 0) {
        expect(allowed.stderr).toMatch(SENTENCE);
        expect(look(disk)).toEqual(before);
      }
    }
    const settings = new KeptSettings(to('home/settings'), () => new Date());
    const kept = settings.write({ theme: 'dark' });
    const stored = JSON.parse(readFileSync(to('home/settings/settings.json'), 'utf8')) as { theme: string };
    expect(stored.theme).toBe(kept.ok ? 'dark' : 'light');

    const written = await run('memory', 'write', from('patch.json'), ...DEMO, '--confirm', confirm, '--json');
    expect([0, 1]).toContain(written.code);
    if (written.code === 1) expect(written.stderr).toMatch(SENTENCE);
    rmSync(to('filler'));
    expect((await run('memory', 'read', ...DEMO, '--out', to('after.bin'))).code).toBe(0);
    expect(readFileSync(to('after.bin')).length).toBe(size('pad.bin'));
    for (const line of readFileSync(to('home/vault/kept.jsonl'), 'utf8').trimEnd().split('\n')) JSON.parse(line);
    const { journals } = JSON.parse((await run('memory', 'journal', 'list', '--json')).stdout) as {
      journals: unknown[];
    };
    if (written.code === 0) expect(journals).toEqual([]);
  });
});
