import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { PadOwner } from '../../../core/pad/owner.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { handLimits } from '../../../renderer/stick/hand-limits.ts';
import { MappingDesk } from '../../../renderer/stick/mapping-desk.svelte.ts';
import type { Origin, Taken } from '../../../renderer/stick/origin.ts';
import { ReloadShelf, type ReloadStore } from '../../../renderer/stick/reload-shelf.ts';
import { sensorFields } from '../../support/fields.ts';
import { mapping as now, memoryStore } from '../support/bench-stick.ts';

const proposed: StickMapping = { x: { min: 1050, centre: 2020, max: 2960 }, y: now.y };

const serial = (one: string): PadOwner => ({ vendorId: 1, productId: 2, serial: one, unit: null });
const origin: Origin = { pad: serial('bench-1'), domain: 'sensor' };

function deskOn(store: ReloadStore = memoryStore(), hasProposal = true) {
  const at = { survey: 's1', stick: 'left' as 'left' | 'right' };
  const desk = new MappingDesk({
    survey: () => at.survey,
    stick: () => at.stick,
    limits: () => handLimits(sensorFields, 'sensor'),
    now: () => now,
    proposed: () => (hasProposal ? proposed : null),
    origin: () => origin,
    shelf: new ReloadShelf(store),
  });
  return { desk, at, store };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('yours', () => {
  it('starts at the first nudge as a copy of the proposed mapping, or of now without one', () => {
    const { desk } = deskOn();
    expect(desk.own).toBeNull();
    desk.nudge('x.max', -4);
    expect(desk.own).toEqual({ ...proposed, x: { ...proposed.x, max: 2956 }, taken: null });
    const without = deskOn(memoryStore(), false).desk;
    without.nudge('y.min', 16);
    expect(without.own).toEqual({ ...now, y: { ...now.y, min: 1016 }, taken: null });
  });

  it('refuses in a sentence what cannot be, and keeps the last good mapping', () => {
    const { desk } = deskOn();
    desk.nudge('x.max', -1);
    const good = desk.own;
    for (const [of, value] of [
      ['x.min', 2020],
      ['x.max', 5000],
      ['y.centre', Number.NaN],
      ['x.centre', 2020.5],
    ] as const) {
      expect(desk.set(of, value)).toBe(false);
      expect(desk.refusal?.of).toBe(of);
      expect(desk.own).toEqual(good);
    }
    desk.nudge('x.max', -1);
    expect(desk.refusal).toBeNull();
  });

  it('makes one step of a drag, which stops where the others let it', () => {
    const { desk } = deskOn();
    for (const value of [1100, 1500, 9000]) desk.drag('x.min', value, 'drag');
    expect(desk.own?.x.min).toBe(2019);
    desk.undo();
    expect(desk.own).toBeNull();
    desk.redo();
    expect(desk.own?.x.min).toBe(2019);
  });

  it('puts one number back, and all of them; undo brings them again', () => {
    const { desk } = deskOn();
    desk.nudge('x.max', -64);
    desk.nudge('x.min', 64);
    desk.reset('x.max', 'now');
    expect(desk.own?.x).toEqual({ min: 1114, centre: 2020, max: 3000 });
    desk.reset('x.max', 'proposed');
    expect(desk.own?.x.max).toBe(2960);
    desk.clear();
    expect(desk.own).toBeNull();
    desk.undo();
    expect(desk.own?.x.min).toBe(1114);
  });

  it('is one for each stick of each survey', () => {
    const { desk, at } = deskOn();
    desk.nudge('x.max', -4);
    at.stick = 'right';
    const right = new MappingDesk({
      survey: () => 's1',
      stick: () => 'right',
      limits: () => handLimits(sensorFields, 'sensor'),
      now: () => now,
      proposed: () => null,
      origin: () => origin,
      shelf: new ReloadShelf(memoryStore()),
    });
    expect(right.own).toBeNull();
    expect(desk.owns.left?.x.max).toBe(2956);
    expect(desk.owns.right).toBeUndefined();
  });

  it('outlives its view with every step, once the hand has been quiet for a moment', () => {
    const { desk, store } = deskOn();
    desk.nudge('x.max', -4);
    desk.nudge('x.max', -4);
    expect(deskOn(store).desk.own).toBeNull();
    vi.advanceTimersByTime(1000);
    const again = deskOn(store).desk;
    expect(again.own?.x.max).toBe(2952);
    again.undo();
    again.undo();
    expect([again.own, again.canUndo, again.canRedo]).toEqual([null, false, true]);
  });

  it('takes a whole mapping that fits, and refuses one that does not', () => {
    const { desk } = deskOn();
    expect(desk.take({ ...now, x: { min: 5, centre: 2000, max: 4095 } }, takenFrom({}))).toBe(true);
    expect(desk.take({ ...now, x: { min: -5, centre: 2000, max: 4095 } }, takenFrom({}))).toBe(false);
    expect(desk.own?.x.min).toBe(5);
  });
});

/** A kept mapping of the surveyed pad, but for what is given. */
function takenFrom(part: Partial<Taken>): Taken {
  return { by: 'kept', name: 'Soft spring', pad: serial('bench-1'), domain: 'sensor', ...part };
}

describe('the source of yours', () => {
  it('is the survey until something is taken, and again before it once that is undone', () => {
    const { desk } = deskOn();
    desk.nudge('x.max', -4);
    expect([desk.origin, desk.doubt]).toEqual([origin, null]);
    desk.take(now, takenFrom({ pad: null }));
    desk.nudge('x.max', -4);
    expect(desk.origin.pad).toBeNull();
    expect(desk.doubt).toMatch(/Soft spring, which does not say of which pad/u);
    desk.undo();
    desk.undo();
    expect([desk.origin, desk.doubt]).toEqual([origin, null]);
  });

  it('is never another pad: the refusal names both, and what was stays', () => {
    const { desk } = deskOn();
    expect(desk.take(now, takenFrom({ pad: serial('other-2') }))).toBe(false);
    expect(desk.refusal?.problem.says).toMatch(/other-2.*bench-1/u);
    expect(desk.own).toBeNull();
  });

  it('is never counts of another meaning', () => {
    const { desk } = deskOn();
    expect(desk.take(now, takenFrom({ domain: 'reported' }))).toBe(false);
    expect(desk.refusal?.problem.says).toMatch(/reported counts, the survey has sensor counts/u);
  });

  it('outlives a reload with the numbers', () => {
    const { desk, store } = deskOn();
    desk.nudge('x.max', -4);
    desk.take(now, takenFrom({ by: 'file', name: 'old.json', pad: null }));
    desk.flush();
    const again = deskOn(store).desk;
    expect(again.own?.taken).toEqual(takenFrom({ by: 'file', name: 'old.json', pad: null }));
    again.undo();
    expect(again.own?.taken).toBeNull();
  });
});
