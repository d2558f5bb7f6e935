import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { handLimits } from '../../../renderer/stick/hand-limits.ts';
import type { HistoryStore } from '../../../renderer/stick/kept-history.ts';
import { MappingDesk } from '../../../renderer/stick/mapping-desk.svelte.ts';
import { sensorFields } from '../../support/fields.ts';
import { mapping as now, memoryStore } from '../support/bench-stick.ts';

const proposed: StickMapping = { x: { min: 1050, centre: 2020, max: 2960 }, y: now.y };

function deskOn(store: HistoryStore = memoryStore(), hasProposal = true) {
  const at = { survey: 's1', stick: 'left' as 'left' | 'right' };
  const desk = new MappingDesk({
    survey: () => at.survey,
    stick: () => at.stick,
    limits: () => handLimits(sensorFields, 'sensor'),
    now: () => now,
    proposed: () => (hasProposal ? proposed : null),
    store,
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
    expect(desk.own).toEqual({ ...proposed, x: { ...proposed.x, max: 2956 } });
    const without = deskOn(memoryStore(), false).desk;
    without.nudge('y.min', 16);
    expect(without.own).toEqual({ ...now, y: { ...now.y, min: 1016 } });
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
      store: memoryStore(),
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
    expect(desk.take({ ...now, x: { min: 5, centre: 2000, max: 4095 } })).toBe(true);
    expect(desk.take({ ...now, x: { min: -5, centre: 2000, max: 4095 } })).toBe(false);
    expect(desk.own?.x.min).toBe(5);
  });
});
