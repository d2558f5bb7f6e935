/** One fault at every step of a write, for every step and every kind: the end is before, after, or what really differs. */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import { applyPatch } from '../../../core/image/apply-patch.ts';
import { differingBytes, memoryEnd } from '../../../core/image/differing-bytes.ts';
import { newExchange } from '../../../core/image/memory-exchange.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import type { MemoryProtocol } from '../../../core/image/memory-protocol.ts';
import { planPatch } from '../../../core/image/plan-patch.ts';
import { planRestore } from '../../../core/image/plan-restore.ts';
import { readMemory } from '../../../core/image/read-memory.ts';
import { writeBlocks } from '../../../core/image/write-blocks.ts';
import type { WriteEnd, WriteJob } from '../../../core/image/write-job.ts';
import { writeMemory } from '../../../core/image/write-memory.ts';
import { done, type Result } from '../../../core/result.ts';
import { memoryImage, type MemoryKind } from '../../../core/simulate/memory-image.ts';
import { demos } from '../../../core/simulate/demos.ts';
import { faultKinds, Killed, MemoryWorld, protocol, type Fault } from '../../support/memory-world.ts';
import { leftMapping, rightMapping } from '../../support/make-image.ts';

const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const moved = {
  left: { x: { min: 700, centre: 2100, max: 3300 }, y: { min: 800, centre: 2000, max: 3200 } },
  right: { ...rightMapping, x: { ...leftMapping.x, max: 3101 } },
};
const maps: Readonly<Record<MemoryKind, MemoryMap>> = Object.fromEntries(
  (['packed', 'words'] as const).map((kind, index) => [kind, bundledMaps[index]]),
) as Record<MemoryKind, MemoryMap>;

function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.problem.says);
  return result.value;
}

/** The job of a plan for a fresh image; the unit is what the pad tells. */
function jobFor(kind: MemoryKind, by: MemoryProtocol): WriteJob {
  const map = maps[kind];
  const factory = demos.healthy.build.firmware;
  const before = memoryImage(kind, { factory, user: null }, 1);
  const world = new MemoryWorld(kind, Uint8Array.from(before));
  const read = valueOf(world.play(readMemory(newExchange(by), () => done(map))));
  const patch = valueOf(planPatch(read.image, map, kind === 'packed' ? 'user' : 'factory', moved, digest));
  const after = valueOf(applyPatch(read.image, patch, map, digest));
  const { image, unit } = read;
  const blocks = valueOf(writeBlocks(patch, image, after, map, by));
  return { map, unit, before: image, after, blocks, rollsBack: true };
}

/** What was left is brought back by the restore that is offered, and that is looked at too. */
function restore(kind: MemoryKind, job: WriteJob, left: Uint8Array, by: MemoryProtocol): void {
  const world = new MemoryWorld(kind, left);
  const { image } = valueOf(world.play(readMemory(newExchange(by), () => done(job.map))));
  const patch = valueOf(planRestore(image, job.before, job.map, 'whole', digest));
  const after = Uint8Array.from(image);
  for (const { offset, new: now } of patch.changes) after.set(Buffer.from(now, 'hex'), offset);
  const blocks = valueOf(writeBlocks(patch, image, after, job.map, by));
  const end = world.play(writeMemory(newExchange(by), { ...job, before: image, after, blocks, rollsBack: false }));
  expect(end.end).toBe('after');
  expect(memoryEnd({ now: world.memory.image, unknown: [] }, job.before, job.after, job.map)).toBe('before');
}

/** Every way a session may end, held against what really stands in the pad. */
function check(kind: MemoryKind, job: WriteJob, fault: Fault, by: MemoryProtocol): string {
  const world = new MemoryWorld(kind, Uint8Array.from(job.before), fault, victimOf(kind));
  const really = (): string => memoryEnd({ now: world.memory.image, unknown: [] }, job.before, job.after, job.map);
  let end: WriteEnd | null = null;
  try {
    end = world.play(writeMemory(newExchange(by), job));
  } catch (thrown) {
    if (!(thrown instanceof Killed)) throw thrown;
  }
  const isOpen = world.journal.some(({ step }) => step === 'begin') && world.journal.at(-1)?.step !== 'end';
  if (end === null) {
    // A program that was killed: without an open journal the memory is as before, or the end was journalled and is true.
    const last = world.journal.at(-1);
    if (!isOpen) expect(really()).toBe(last?.step === 'end' ? last.end : 'before');
    else if (really() !== 'before') restore(kind, job, world.memory.image, by);
    return `killed, ${isOpen ? 'journal' : 'no journal'}`;
  }
  // What somebody writes where nobody reads any more cannot be known.
  if (end.end !== 'differs' && !world.isUnseen)
    expect([fault, end.problem, really()]).toEqual([fault, end.problem, end.end]);
  if (end.end !== 'after') expect(end.problem).not.toBeNull();
  if (end.end === 'differs') {
    const named = differingBytes(end, job.before, job.after, job.map);
    expect(named.length).toBeGreaterThan(0);
    const isNamed = (at: number): boolean =>
      named.some(({ offset, before }) => at >= offset && at < offset + before.length / 2);
    const { image } = world.memory;
    const silent = [...image.keys()].filter(
      (at) =>
        image[at] !== job.before[at] &&
        !isNamed(at) &&
        !(world.isUnseen && at === victimOf(kind).elsewhere) &&
        !job.map.volatile.some(({ offset, length }) => at >= offset && at < offset + length),
    );
    expect([fault, silent]).toEqual([fault, []]);
    expect(isOpen).toBe(end.problem?.code !== 'memory-changed');
    if (really() !== 'before') restore(kind, job, image, by);
  }
  return end.end;
}

function victimOf(kind: MemoryKind) {
  return kind === 'packed' ? { inPlan: 0x7631, elsewhere: 0x6000 } : { inPlan: 0x0102, elsewhere: 0x0300 };
}

/**
 * Every step of the memory of 4 KiB. Of the one of 48 KiB every step from just before the first write to the end of the blocks,
 * and of the long readings around them each 499th: they are all alike.
 */
describe.each(['words', 'packed'] as const)('a write to a pad with a memory of %s', (kind) => {
  const job = jobFor(kind, protocol);
  const sound = new MemoryWorld(kind, Uint8Array.from(job.before));
  const end = sound.play(writeMemory(newExchange(protocol), job));

  it('ends in after where nothing goes wrong, with every step journalled before it is taken', () => {
    expect(end).toMatchObject({ end: 'after', problem: null });
    expect(sound.journal.map(({ step }) => step)).toEqual(['begin', ...job.blocks.map(() => 'write'), 'end']);
    expect(sound.kept).toHaveLength(1);
  });

  it.each(faultKinds)('tells the truth and can be restored: %s, at every step', (fault) => {
    const ends = new Map<string, number>();
    const [steps, first] = /disk|killed/u.test(fault)
      ? [sound.effects, sound.firstWrite.effect]
      : [sound.commands, sound.firstWrite.command];
    const isTried = (k: number): boolean => kind === 'words' || Math.abs(k - first - 8) < 10 || k % 499 === 0;
    const tried = Array.from({ length: steps }, (_, k) => k).filter(isTried);
    for (const k of tried) {
      const told = check(kind, job, { kind: fault, k }, protocol);
      ends.set(told, (ends.get(told) ?? 0) + 1);
    }
    expect([...ends.values()].reduce((sum, count) => sum + count, 0)).toBe(tried.length);
    if (process.env['FAULT_TABLE'] === '1')
      console.info(`${kind} | ${fault} | ${tried.length} of ${steps} | ${JSON.stringify(Object.fromEntries(ends))}`);
  });
});
