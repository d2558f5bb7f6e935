/**
 * One fault at a step of a write through the whole bench, with real files of journal and vault: what the bench says of the end
 * is true of the pad, a journal is open exactly where a restore is needed, and what it offers works.
 */
import { describe, expect, it, vi } from 'vitest';
import { memoryEnd } from '../../../../core/image/differing-bytes.ts';
import { faultDisk, type DiskFault } from '../../../support/fault-disk.ts';
import { faultMap, victim } from '../../../support/fault-pad.ts';
import { faultKinds, type FaultKind } from '../../../support/memory-world.ts';
import {
  begin,
  faultBench,
  openJournals,
  planned,
  show,
  write,
  type FaultBench,
  type MemoryState,
} from '../fault-bench.ts';

vi.mock('node:fs/promises', async (original) => {
  const { faultDisk: disk } = await import('../../../support/fault-disk.ts');
  return disk.over(await original());
});

type BenchFault =
  | { readonly on: 'wire'; readonly kind: FaultKind; readonly k: number }
  | { readonly on: 'disk'; readonly kind: DiskFault; readonly k: number }
  | { readonly on: 'program'; readonly kind: 'killed before' | 'killed after'; readonly k: number };

interface Sound {
  readonly before: Uint8Array;
  readonly after: Uint8Array;
  readonly commands: number;
  readonly lines: number;
  /** The command that the first block goes out with. */
  readonly firstWrite: number;
}

/** A write that nothing goes wrong with: how many steps it has, and what comes of it. */
async function soundWrite(): Promise<Sound> {
  faultDisk.arm(null);
  const bench = await faultBench();
  const before = Uint8Array.from(bench.pad.image);
  const wish = await planned(bench, bench.handle);
  bench.pad.arm(null);
  faultDisk.arm(null);
  const end = await write(bench, bench.handle, wish);
  expect(end).toMatchObject({ end: 'after', problem: null });
  const { commands, firstWrite } = bench.pad.world;
  return {
    before,
    after: Uint8Array.from(bench.pad.image),
    commands,
    lines: faultDisk.lines,
    firstWrite: firstWrite.command,
  };
}

const really = (image: Uint8Array, { before, after }: Sound) =>
  memoryEnd({ now: image, unknown: [] }, before, after, faultMap);

/** The write with its fault; null where the program was killed at it. */
async function writeWith(bench: FaultBench, fault: BenchFault): Promise<MemoryState | null> {
  const { pad, handle, made } = bench;
  const wish = await planned(bench, handle);
  pad.arm(fault.on === 'wire' ? fault : null);
  pad.onAbort = () => void made.bench.handle('memory.abort', { pad: handle });
  faultDisk.arm(fault.on === 'disk' ? { kind: fault.kind, line: fault.k } : null);
  if (fault.on === 'program') pad.killAt = { command: fault.k, after: fault.kind === 'killed after' };
  let end: MemoryState | null = null;
  made.bench.listen('memory.state', (state) => {
    if (state.end !== null) end = state;
  });
  await begin(bench, handle, wish);
  await bench.until(() => end !== null || faultDisk.isDead || (fault.on === 'program' && pad.commands > fault.k));
  return end;
}

/** Every byte that is not as before and may not be passed over stands in the list. */
function expectNamed({ bytes }: MemoryState, bench: FaultBench, { before }: Sound): void {
  expect(bytes.length).toBeGreaterThan(0);
  const { image, isUnseen } = { image: bench.pad.image, isUnseen: bench.pad.world.isUnseen };
  const isNamed = (at: number): boolean =>
    bytes.some(({ offset, before: old }) => at >= offset && at < offset + old.length / 2);
  const silent = [...image.keys()].filter(
    (at) =>
      image[at] !== before[at] &&
      !isNamed(at) &&
      !(isUnseen && at === victim.elsewhere) &&
      !faultMap.volatile.some(({ offset, length }) => at >= offset && at < offset + length),
  );
  expect(silent).toEqual([]);
  for (const { offset, now } of bytes)
    if (now !== null && !isUnseen)
      expect(Buffer.from(image.subarray(offset, offset + now.length / 2)).toString('hex')).toBe(now);
}

/** Looks at what was left, and brings it to one end. */
async function repair(bench: FaultBench, sound: Sound, to: 'before' | 'after'): Promise<void> {
  const { pad, made } = bench;
  faultDisk.arm(null);
  pad.mend();
  const handle = await bench.open(pad);
  const [journal = ''] = await openJournals(bench);
  const shown = await show(bench, handle, journal);
  expect(shown.end).toBe(really(pad.image, sound));
  if (shown.end === 'differs') {
    expectNamed(shown, bench, sound);
    await made.bench.handle('memory.allow', { pad: handle, writing: true });
    const end = await write(bench, handle, to === 'before' ? { restore: journal } : { finish: journal });
    expect(end).toMatchObject({ end: to, problem: null });
    expect(really(pad.image, sound)).toBe(to);
  }
  expect(await openJournals(bench)).toEqual([]);
}

/** What is found by the next program after this one was killed. */
async function restart(bench: FaultBench, sound: Sound, to: 'before' | 'after'): Promise<string> {
  const next = await faultBench({ folder: bench.made.folder, pads: [{ image: Uint8Array.from(bench.pad.image) }] });
  const isOpen = (await openJournals(next)).length > 0;
  const stands = really(next.pad.image, sound);
  if (isOpen) await repair(next, sound, to);
  else expect(stands).not.toBe('differs');
  await next.made.bench.close();
  // The dead program's remains.
  bench.pad.leave();
  faultDisk.bury();
  await bench.made.bench.close();
  return `killed: ${stands}, ${isOpen ? 'journal' : 'no journal'}`;
}

async function check(fault: BenchFault, sound: Sound): Promise<string> {
  faultDisk.arm(null);
  const bench = await faultBench();
  const to = fault.k % 2 === 0 ? 'before' : 'after';
  const end = await writeWith(bench, fault);
  if (end === null) return restart(bench, sound, to);
  const { pad, made } = bench;
  const isOpen = (await openJournals(bench)).length > 0;
  // What somebody writes where nobody reads any more cannot be known.
  if (end.end !== 'differs' && !pad.world.isUnseen) expect(end.end).toBe(really(pad.image, sound));
  if (end.end !== 'after') expect(end.problem).not.toBeNull();
  if (end.end === 'differs') expectNamed(end, bench, sound);
  const isNeeded = end.end === 'differs' && end.problem?.code !== 'memory-changed';
  // Without a last look at the whole the journal waits for the next look at the pad.
  if (isNeeded || end.problem?.code !== 'pad-gone') expect(isOpen).toBe(isNeeded);
  if (isOpen) await repair(bench, sound, to);
  await made.bench.close();
  return `${end.end}${isOpen ? ', journal' : ''}`;
}

const wireKinds = faultKinds.filter((kind) => !/disk|killed/u.test(kind));
const diskKinds: readonly DiskFault[] = ['full', 'full always', 'killed before', 'killed within', 'killed after'];

const faults: readonly (readonly [on: BenchFault['on'], kind: string])[] = [
  ...wireKinds.map((kind) => ['wire', kind] as const),
  ...diskKinds.map((kind) => ['disk', kind] as const),
  ['program', 'killed before'],
  ['program', 'killed after'],
];

/** Each around the blocks and the marker, and a sample of the readings before and after them, another one for each kind. */
function stepsOf(on: BenchFault['on'], index: number, { commands, lines, firstWrite }: Sound): number[] {
  const steps = Array.from({ length: on === 'disk' ? lines : commands }, (_, k) => k);
  return steps.filter(
    (k) => on === 'disk' || (k >= firstWrite - 2 && k <= firstWrite + 12) || k % 16 === (7 * index) % 16,
  );
}

describe('a write through the bench', () => {
  it.each(faults)(
    'tells the truth and can be put right: on the %s, %s',
    async (on, kind) => {
      const sound = await soundWrite();
      const ends = new Map<string, number>();
      const tried = stepsOf(
        on,
        faults.findIndex((one) => one[0] === on && one[1] === kind),
        sound,
      );
      for (const k of tried) {
        const told = await check({ on, kind, k } as BenchFault, sound).catch((thrown: unknown) => {
          throw new Error(`${on}, ${kind}, step ${k}: ${String(thrown)}`, { cause: thrown });
        });
        ends.set(told, (ends.get(told) ?? 0) + 1);
      }
      expect(tried.length).toBeGreaterThan(0);
      if (process.env['FAULT_TABLE'] === '1')
        console.info(`${on} | ${kind} | ${tried.length} | ${JSON.stringify(Object.fromEntries(ends))}`);
    },
    600_000,
  );
});
