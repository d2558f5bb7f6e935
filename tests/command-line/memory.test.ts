/** `memory`: a simulated pad's own memory read, shown, written, read again; and every input that must change nothing. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Patch } from '../../core/image/patch.ts';
import { demoPads } from '../../core/pad/demo-profile.ts';
import { ensureBuilt } from '../electron/shell/built.ts';
import { ACCEPTED, lastWords, readAndPlan, SENTENCE, show, wished } from './memory-commands.ts';
import { fileOf, stickwright } from './run-command.ts';

const DEMO = ['--demo', 'loose'] as const;
const patchPad = { ...demoPads.sensor, serial: 'loose-kept', unit: null };
let folder: string;
const file = (name: string): string => path.join(folder, name);
const write = (...more: string[]): string[] => ['memory', 'write', file('patch.json'), ...DEMO, ...more];

beforeAll(async () => {
  await ensureBuilt();
  folder = await mkdtemp(path.join(tmpdir(), 'stickwright-memory-'));
  process.env['STICKWRIGHT_HOME'] = folder;
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

async function padFiles(): Promise<Record<string, string[]>> {
  const names = async (name: string): Promise<string[]> => (await readdir(file(name)).catch(() => [])).toSorted();
  return { memories: await names('demos'), journals: await names('journals'), over: await names('journals/over') };
}

describe('stickwright memory', () => {
  it('reads, plans, shows, writes what was confirmed, and reads it again as planned', async () => {
    await readAndPlan(folder, 'healthy');
    const before = await readFile(file('pad.bin'));
    const healthy = ['memory', 'write', file('patch.json'), '--demo', 'healthy'];
    const shut = await stickwright(healthy);
    expect(shut).toMatchObject({ code: 1, stdout: '' });
    expect(lastWords(shut)).toContain('switched off');
    expect((await stickwright(['memory', 'allow', 'on', '--demo', 'healthy'])).stdout).toContain('can ruin the pad');

    const shown = await show(healthy);
    expect(shown.changes.map(({ means }) => means).join()).toContain('factory left x.max 3270 → 3000');
    expect(shown.blocks.length).toBeGreaterThan(0);
    expect(shown.cautions.length).toBeGreaterThan(3);
    expect(shown.asks).toEqual(['factory']);
    expect((await padFiles())['memories']).toEqual([]);
    const unasked = await stickwright([...healthy, '--confirm', shown.confirm]);
    expect(unasked).toMatchObject({ code: 1, stdout: '' });
    expect(lastWords(unasked)).toContain('--accept factory');
    expect((await padFiles())['journals']).toEqual([]);
    const written = await stickwright([...healthy, '--confirm', shown.confirm, ...ACCEPTED, '--json']);
    expect(written).toMatchObject({ code: 0 });
    expect(JSON.parse(written.stdout)).toMatchObject({ kind: 'stickwright-memory-end', end: 'after', bytes: [] });

    const { sha256, result } = JSON.parse(await readFile(file('patch.json'), 'utf8')) as Patch;
    expect(sha256).not.toBe(result);
    await stickwright(['image', 'apply', file('pad.bin'), file('patch.json'), '--out', file('planned.bin')]);
    await stickwright(['memory', 'read', '--demo', 'healthy', '--out', file('again.bin')]);
    const differing = await stickwright(['image', 'compare', file('planned.bin'), file('again.bin'), '--json']);
    const { runs } = JSON.parse(differing.stdout) as { runs: { volatile: boolean }[] };
    expect(runs.filter(({ volatile }) => !volatile)).toEqual([]);
    expect((await stickwright(['image', 'show', file('again.bin')])).stdout).toContain('x 300 1500 3000');

    const { sha256: kept } = JSON.parse(await readFile(file('patch.json'), 'utf8')) as Patch;
    const back = ['memory', 'restore', '--image', kept.slice(0, 16), '--demo', 'healthy'];
    const restored = await stickwright([...back, ...ACCEPTED, '--confirm', (await show(back)).confirm]);
    expect(restored).toMatchObject({ code: 0 });
    await stickwright(['memory', 'read', '--demo', 'healthy', '--out', file('again.bin'), '--force']);
    expect((await readFile(file('again.bin'))).subarray(0, 0xb000)).toEqual(before.subarray(0, 0xb000));
  });

  it('does not overwrite an image file, and says so before it touches the pad', async () => {
    const there = await fileOf('there.bin', 'mine');
    const ran = await stickwright(['memory', 'read', ...DEMO, '--out', there]);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(/^stickwright: [^\n]+--force to replace it\.\n$/u);
    expect(await readFile(there, 'utf8')).toBe('mine');
  });

  it.each([
    [['memory']],
    [['memory', 'read', ...DEMO]],
    [['memory', 'read', ...DEMO, '--pad', '/dev/hidraw0', '--out', 'x']],
    [['memory', 'write']],
    [['memory', 'allow', 'perhaps', ...DEMO]],
    [['memory', 'restore', ...DEMO]],
    [['memory', 'restore', '--image', 'ab', '--journal', 'x']],
    [['memory', 'journal', 'burn']],
  ])('ends with 2 for %j', async (args) => {
    expect(await stickwright(args)).toMatchObject({ code: 2, stdout: '' });
  });
});

describe('a confirmation', () => {
  beforeEach(async () => {
    await readAndPlan(folder, 'loose');
    await stickwright(['memory', 'allow', 'on', ...DEMO]);
  });

  async function refused(token: string, says: string): Promise<void> {
    const before = await padFiles();
    const ran = await stickwright(write('--confirm', token, ...ACCEPTED));
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(lastWords(ran)).toMatch(SENTENCE);
    expect(lastWords(ran)).toContain(says);
    expect(await padFiles()).toEqual(before);
  }

  it('that is wrong, older than the newest, or too old is refused', async () => {
    const first = await show(write());
    const second = await show(write());
    await refused('0000000000000000', 'used or for something else');
    await refused(first.confirm, 'used or for something else');
    const [kept = ''] = await readdir(file('confirmations'));
    const text = await readFile(file(`confirmations/${kept}`), 'utf8');
    expect(text).not.toContain(second.confirm);
    const { until } = JSON.parse(text) as { until: string };
    await writeFile(file(`confirmations/${kept}`), text.replace(until, new Date(Date.now() - 1000).toISOString()));
    await refused(second.confirm, 'too old');
  });

  it('is good for the plan that was shown alone, and once', async () => {
    const { confirm } = await show(write());
    await readAndPlan(folder, 'loose', { left: { ...wished.left, x: { min: 301, centre: 1500, max: 3000 } } } as never);
    await refused(confirm, 'another plan');
    await readAndPlan(folder, 'loose');
    expect(await stickwright(write('--confirm', confirm, ...ACCEPTED))).toMatchObject({ code: 0 });
    await refused(confirm, 'used or for something else');
    const [over = ''] = await readdir(file('journals/over')).then((names) => names.toSorted().toReversed());
    const undo = ['memory', 'restore', '--journal', over.replace('.jsonl', '')];
    expect(await stickwright([...undo, ...ACCEPTED, '--confirm', (await show(undo)).confirm])).toMatchObject({
      code: 0,
    });
  });

  it('is of no use while another program has the pad', async () => {
    const { confirm } = await show(write());
    const args = ['tests/support/hold-pad-lock.ts', file('locks'), file('demos/loose.bin')];
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
    const [said] = (await once(child.stdout, 'data')) as [Buffer];
    expect(said.toString()).toContain('taken');
    await refused(confirm, `in use by process ${String(child.pid)}`);
    child.kill();
    await once(child, 'exit');
    expect(await show(write())).toHaveProperty('confirm');
  });
});

describe('bad input', () => {
  let patch: Patch;
  beforeAll(async () => {
    await readAndPlan(folder, 'loose');
    await stickwright(['memory', 'allow', 'on', ...DEMO]);
    patch = JSON.parse(await readFile(file('patch.json'), 'utf8')) as Patch;
  });

  async function refused(args: readonly string[], says: string): Promise<void> {
    const before = await padFiles();
    const ran = await stickwright(args);
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(lastWords(ran)).toMatch(SENTENCE);
    expect(lastWords(ran)).toContain(says);
    expect(await padFiles()).toEqual(before);
  }

  const edited = (change: Partial<Patch>): string => JSON.stringify({ ...patch, ...change });
  const firstChange = (change: object) => () =>
    edited({ changes: [{ ...patch.changes[0], ...change } as never, ...patch.changes.slice(1)] });

  it.each<[string, string, () => string]>([
    ['an empty file', 'is not JSON', () => ''],
    ['a text file', 'is not JSON', () => 'this is no patch\n'],
    ['a memory image', 'is not JSON', () => '\u0000\u0001'],
    ['another JSON file', 'The patch file', () => '{"kind":"stickwright-mapping"}'],
    ['one byte short', '4095 bytes', () => edited({ size: 4095 })],
    ['the wrong map', 'bench-pad-packed', () => edited({ map: 'bench-pad-packed' })],
    ['an unknown map', 'no memory map "elsewhere"', () => edited({ map: 'elsewhere' })],
    ['another image', 'for another image', () => edited({ sha256: '0'.repeat(64) })],
    ['a number edited by hand', 'changed after it was planned', firstChange({ new: 'ff01' })],
    ['old bytes edited by hand', 'does not hold what the patch expects', firstChange({ old: 'ffff' })],
    ['a place edited by hand', 'outside', firstChange({ offset: 2048 })],
    ['more bytes than there were', 'must have as many bytes', firstChange({ new: 'ff01ff' })],
    ['a restore that never stood there', 'never kept', () => edited({ restores: true, result: '1'.repeat(64) })],
  ])('%s is refused in one sentence and nothing is written', async (_, says, text) => {
    await refused(['memory', 'write', await fileOf('bad.json', text()), ...DEMO], says);
  });

  it.each<[string, string, object]>([
    ['a patch of another pad', 'this memory is of', { pad: { ...patchPad, serial: 'healthy-kept' } }],
    ['a patch of another product', 'this memory is of', { pad: { ...patchPad, productId: 11 } }],
    ['a patch of reported counts', 'reported counts', { domain: 'reported' }],
  ])('%s is refused', async (_, says, change) => {
    const text = JSON.stringify({ ...patch, ...change });
    await refused(['memory', 'write', await fileOf('foreign.json', text), ...DEMO], says);
    const out = file('foreign.bin');
    await refused(['image', 'apply', file('pad.bin'), await fileOf('foreign.json', text), '--out', out], says);
    await expect(readFile(out)).rejects.toThrow();
  });

  it.each<[string, string, object]>([
    ['another pad', 'this memory is of', { pad: { ...patchPad, serial: 'healthy-kept' }, domain: 'sensor' }],
    ['reported counts', 'reported counts', { pad: patchPad, domain: 'reported' }],
  ])('a mapping of %s is not planned', async (_, says, whose) => {
    const mapping = { kind: 'stickwright-mapping', version: 1, ...whose, sticks: wished };
    const from = await fileOf('foreign.json', JSON.stringify(mapping));
    const out = file('foreign-patch.json');
    const plan = ['image', 'plan', file('pad.bin'), '--layer', 'factory', '--mapping', from, '--out', out];
    await refused(plan, says);
    await expect(readFile(out)).rejects.toThrow();
  });

  it('a mapping that nobody knows the pad of is asked for by its own word', async () => {
    const from = await fileOf('bare.json', JSON.stringify({ kind: 'stickwright-mapping', version: 1, sticks: wished }));
    const out = file('bare-patch.json');
    const plan = ['image', 'plan', file('pad.bin'), '--layer', 'factory', '--mapping', from, '--out', out, '--force'];
    const planned = await stickwright([...plan, '--json']);
    expect(planned).toMatchObject({ code: 0 });
    expect((JSON.parse(planned.stdout) as { asks: string[] }).asks).toEqual(['unknown-pad', 'factory']);
    const args = ['memory', 'write', out, ...DEMO];
    const shown = await show(args);
    expect(shown.asks).toEqual(['unknown-pad', 'factory']);
    await refused([...args, '--confirm', shown.confirm, ...ACCEPTED], '--accept unknown-pad');
    expect(await stickwright([...args, '--accept', 'everything'])).toMatchObject({ code: 2 });
  });

  it('the map that the pad does not have is refused', async () => {
    await refused(write('--map', 'bench-pad-packed'), 'has the map bench-pad-words');
    const out = file('none.bin');
    await refused(['memory', 'read', ...DEMO, '--map', 'bench-pad-packed', '--out', out], 'has the map');
    await expect(readFile(out)).rejects.toThrow();
  });

  it('a pad without a memory protocol, a demo that is none, a kept image that is none are named', async () => {
    await refused(['memory', 'read', '--demo', 'plain', '--out', file('none.bin')], 'no memory protocol');
    await refused(['memory', 'read', '--demo', 'golden', '--out', file('none.bin')], 'no demo pad called "golden"');
    await refused(['memory', 'restore', '--image', 'eeeeeeee', ...DEMO], 'No kept image');
  });

  it('a simulated pad whose kept memory is one byte short is not taken for a pad', async () => {
    await writeFile(file('demos/stale.bin'), new Uint8Array(49_151));
    await refused(['memory', 'read', '--demo', 'stale', '--out', file('none.bin')], 'stale.bin is not whole');
    await rm(file('demos/stale.bin'));
  });

  it('a kept image that rotted is not written', async () => {
    const kept = file(`vault/${patch.sha256.slice(0, 2)}/${patch.sha256}.bin`);
    const bytes = await readFile(kept);
    await writeFile(
      kept,
      Uint8Array.from(bytes, (byte, at) => (at === 300 ? byte ^ 1 : byte)),
    );
    await refused(['memory', 'restore', '--image', patch.sha256, ...DEMO], 'no longer what it was');
    await writeFile(kept, bytes);
  });

  it('a journal of another pad, and one that rotted', async () => {
    const [over = ''] = await readdir(file('journals/over'));
    const id = over.replace('.jsonl', '');
    const text = await readFile(file(`journals/over/${over}`), 'utf8');
    await writeFile(file(`journals/${over}`), text.slice(0, -20));
    for (const what of [
      ['journal', 'show', id],
      ['journal', 'finish', id],
      ['restore', '--journal', id],
    ])
      await refused(['memory', ...what, '--demo', 'worn'], 'This journal is of another pad');
    await writeFile(file(`journals/${over}`), `rot\n${text}`);
    await refused(['memory', 'journal', 'show', id], 'cannot be understood at line 1');
    await refused(write(), 'cannot be understood at line 1');
    const listed = await stickwright(['memory', 'journal']);
    expect(listed).toMatchObject({ code: 0, stdout: '' });
    expect(listed.stderr).toContain('cannot be understood at line 1');
    expect(await stickwright(['memory', 'journal', 'dismiss', id])).toMatchObject({ code: 0 });
    expect(await show(write())).toHaveProperty('confirm');
  });
});
