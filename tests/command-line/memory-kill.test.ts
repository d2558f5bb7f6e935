/**
 * A program that is killed for good in the middle of a write: the next one finds the journal, and brings back what was before or
 * goes on to what was planned. The moments are counted in lines of the journal and in blocks that the pad has stored, not in time.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { bundledProtocols } from '../../core/image/bundled-protocols.ts';
import { createRandom } from '../../core/numeric/random.ts';
import { ensureBuilt, outFile } from '../electron/shell/built.ts';
import { ACCEPTED, lastWords, readAndPlan, show } from './memory-commands.ts';
import { stickwright } from './run-command.ts';

const DEMO = ['--demo', 'worn'] as const;
const LOOK_MILLIS = 2;
/** Blocks of four bytes: six for the numbers of both sticks, one for the checksum. */
const BLOCKS = 7;
let folder: string;
const file = (name: string): string => path.join(folder, name);
const bytesOf = async (name: string): Promise<string> => (await readFile(file(name))).toString('hex');

interface Moment {
  readonly of: 'line' | 'block';
  readonly count: number;
  readonly then: 'restore' | 'finish';
}

/** Kills that left the pad between before and planned. */
let halfway = 0;

beforeAll(async () => {
  await ensureBuilt();
  folder = await mkdtemp(path.join(tmpdir(), 'stickwright-kill-'));
  process.env['STICKWRIGHT_HOME'] = folder;
  await mkdir(file('protocols'));
  const [protocol] = bundledProtocols;
  const slow = { ...protocol, id: 'slow', spacingMillis: 12, write: { code: 3, block: 4, page: 256 } };
  await writeFile(file('protocols/slow.json'), JSON.stringify(slow));
  await stickwright(['memory', 'allow', 'on', ...DEMO]);
}, 180_000);
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Lines of the one open journal; 0 while there is none. */
async function linesNow(): Promise<number> {
  const [journal] = (await readdir(file('journals')).catch(() => [])).filter((name) => name.endsWith('.jsonl'));
  if (journal === undefined) return 0;
  return (await readFile(file(`journals/${journal}`), 'utf8').catch(() => '')).split('\n').length - 1;
}

/** Starts the confirmed write and sends it the signal at that moment; tells how it ended. */
async function writeUntil(
  confirm: string,
  { of, count }: Pick<Moment, 'of' | 'count'>,
  signal: 'SIGKILL' | 'SIGINT',
): Promise<[code: number | null, signal: string | null]> {
  const args = ['memory', 'write', file('patch.json'), ...DEMO, '--confirm', confirm, ...ACCEPTED, '--real-time'];
  const child = spawn(process.execPath, [outFile('main/command-line.js'), ...args], { stdio: 'ignore' });
  const exit = once(child, 'exit');
  const memories = new Set<string>();
  for (;;) {
    if (child.exitCode !== null)
      throw new Error(`The write ended with ${String(child.exitCode)} before it was killed.`);
    // The first one is what stood there before.
    memories.add(await bytesOf('demos/worn.bin').catch(() => ''));
    if ((of === 'line' ? await linesNow() : memories.size - 1) >= count) break;
    await pause(LOOK_MILLIS);
  }
  child.kill(signal);
  return (await exit) as [number | null, string | null];
}

async function openJournals(): Promise<{ journal: string; identity: { serial: string }; map: string }[]> {
  const ran = await stickwright(['memory', 'journal', '--json']);
  expect(ran).toMatchObject({ code: 0, stderr: '' });
  return (JSON.parse(ran.stdout) as { journals: Awaited<ReturnType<typeof openJournals>> }).journals;
}

async function readPad(): Promise<string> {
  expect(await stickwright(['memory', 'read', ...DEMO, '--out', file('now.bin'), '--force'])).toMatchObject({
    code: 0,
  });
  return bytesOf('now.bin');
}

/** Some of the lines and blocks, drawn anew for another seed: always the head alone, and the last of both. */
function moments(seed: number): Moment[] {
  const random = createRandom(seed);
  const among = (least: number, most: number): number => least + Math.floor((most - least + 1) * random.next());
  return [
    { of: 'line', count: 1, then: 'restore' },
    { of: 'line', count: among(2, 4), then: 'restore' },
    { of: 'line', count: among(5, BLOCKS), then: 'finish' },
    { of: 'line', count: 1 + BLOCKS, then: 'restore' },
    { of: 'block', count: among(1, 3), then: 'finish' },
    { of: 'block', count: among(4, BLOCKS - 1), then: 'restore' },
    { of: 'block', count: BLOCKS, then: 'restore' },
  ];
}

describe('a write that is killed', () => {
  let before: string;
  let planned: string;
  // A pad whose file is gone is a new one, with the same memory as the first: one plan is for them all.
  beforeAll(async () => {
    await readAndPlan(folder, 'worn');
    const apply = ['image', 'apply', file('pad.bin'), file('patch.json'), '--out', file('planned.bin'), '--force'];
    expect(await stickwright(apply)).toMatchObject({ code: 0 });
    [before, planned] = [await bytesOf('pad.bin'), await bytesOf('planned.bin')];
    expect(planned).not.toBe(before);
  });
  beforeEach(() => rm(file('demos'), { recursive: true, force: true }));

  it.each(moments(20_261_128))('at $of $count is found by the next program, which can $then', async (moment) => {
    const write = ['memory', 'write', file('patch.json'), ...DEMO];
    const { confirm, blocks } = await show(write);
    expect(blocks).toHaveLength(BLOCKS);
    expect(await writeUntil(confirm, moment, 'SIGKILL')).toEqual([null, 'SIGKILL']);
    const left = await bytesOf('demos/worn.bin').catch(() => before);
    const isHalfway = left !== before && left !== planned;
    if (isHalfway) halfway += 1;

    const [broken, ...others] = await openJournals();
    expect(others).toEqual([]);
    expect(broken).toMatchObject({ identity: { serial: 'worn-kept' }, map: 'bench-pad-words' });
    const id = broken?.journal ?? '';
    if (moment.count > 1) {
      const again = await stickwright(write);
      expect(again).toMatchObject({ code: 1, stdout: '' });
      expect(lastWords(again)).toMatch(/broken off|another image/u);
    }
    const take =
      moment.then === 'finish' ? ['memory', 'journal', 'finish', id] : ['memory', 'restore', '--journal', id];
    const shown = await stickwright([...take, '--json']);
    expect(shown, shown.stderr).toMatchObject({ code: 0 });
    const told = JSON.parse(shown.stdout) as { kind: string; end?: string; confirm?: string };
    if (isHalfway) expect(told.kind).toBe('stickwright-memory-plan');
    // Where nothing had reached the pad, there is nothing to bring back and the journal is over.
    if (told.confirm === undefined) expect(told.end).toBe(moment.then === 'restore' ? 'before' : 'after');
    else expect((await stickwright([...take, '--confirm', told.confirm, ...ACCEPTED])).code).toBe(0);
    expect(await readPad()).toBe(moment.then === 'restore' ? before : planned);
    expect(await openJournals()).toEqual([]);
  });

  it('was killed between its first block and its last at some of these moments', () => {
    expect(halfway).toBeGreaterThan(2);
  });

  it('by an interrupt from the keyboard puts the old bytes back first', async () => {
    const { confirm } = await show(['memory', 'write', file('patch.json'), ...DEMO]);
    expect(await writeUntil(confirm, { of: 'line', count: 4 }, 'SIGINT')).toEqual([1, null]);
    expect(await bytesOf('demos/worn.bin')).toBe(before);
    expect(await openJournals()).toEqual([]);
  });
});
