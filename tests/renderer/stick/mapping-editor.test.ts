import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { PadOwner } from '../../../core/pad/owner.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { handLimits } from '../../../renderer/stick/hand-limits.ts';
import { MappingEditor } from '../../../renderer/stick/mapping-editor.svelte.ts';
import type { Origin, Taken } from '../../../renderer/stick/origin.ts';
import { OverReload, type ReloadStore } from '../../../renderer/stick/over-reload.ts';
import { sensorFields } from '../../support/fields.ts';
import { mapping as now, memoryStore } from '../support/bench-stick.ts';

const proposed: StickMapping = { x: { min: 1050, centre: 2020, max: 2960 }, y: now.y };

const serial = (one: string): PadOwner => ({ vendorId: 1, productId: 2, serial: one, unit: null });
const origin: Origin = { pad: serial('bench-1'), domain: 'sensor' };

function editorOn(store: ReloadStore = memoryStore(), hasProposal = true) {
  const at = { survey: 's1', stick: 'left' as 'left' | 'right' };
  const editor = new MappingEditor({
    survey: () => at.survey,
    stick: () => at.stick,
    limits: () => handLimits(sensorFields, 'sensor'),
    now: () => now,
    proposed: () => (hasProposal ? proposed : null),
    origin: () => origin,
    overReload: new OverReload(store),
  });
  return { editor, at, store };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('yours', () => {
  it('starts at the first nudge as a copy of the proposed mapping, or of now without one', () => {
    const { editor } = editorOn();
    expect(editor.own).toBeNull();
    editor.nudge('x.max', -4);
    expect(editor.own).toEqual({ ...proposed, x: { ...proposed.x, max: 2956 }, taken: null });
    const without = editorOn(memoryStore(), false).editor;
    without.nudge('y.min', 16);
    expect(without.own).toEqual({ ...now, y: { ...now.y, min: 1016 }, taken: null });
  });

  it('refuses in a sentence what cannot be, and keeps the last good mapping', () => {
    const { editor } = editorOn();
    editor.nudge('x.max', -1);
    const good = editor.own;
    for (const [of, value] of [
      ['x.min', 2020],
      ['x.max', 5000],
      ['y.centre', Number.NaN],
      ['x.centre', 2020.5],
    ] as const) {
      expect(editor.set(of, value)).toBe(false);
      expect(editor.refusal?.of).toBe(of);
      expect(editor.own).toEqual(good);
    }
    editor.nudge('x.max', -1);
    expect(editor.refusal).toBeNull();
  });

  it('makes one step of a drag, which stops where the others let it', () => {
    const { editor } = editorOn();
    for (const value of [1100, 1500, 9000]) editor.drag('x.min', value, 'drag');
    expect(editor.own?.x.min).toBe(2019);
    editor.undo();
    expect(editor.own).toBeNull();
    editor.redo();
    expect(editor.own?.x.min).toBe(2019);
  });

  it('puts one number back, and all of them; undo brings them again', () => {
    const { editor } = editorOn();
    editor.nudge('x.max', -64);
    editor.nudge('x.min', 64);
    editor.reset('x.max', 'now');
    expect(editor.own?.x).toEqual({ min: 1114, centre: 2020, max: 3000 });
    editor.reset('x.max', 'proposed');
    expect(editor.own?.x.max).toBe(2960);
    editor.clear();
    expect(editor.own).toBeNull();
    editor.undo();
    expect(editor.own?.x.min).toBe(1114);
  });

  it('is one for each stick of each survey', () => {
    const { editor, at } = editorOn();
    editor.nudge('x.max', -4);
    at.stick = 'right';
    const right = new MappingEditor({
      survey: () => 's1',
      stick: () => 'right',
      limits: () => handLimits(sensorFields, 'sensor'),
      now: () => now,
      proposed: () => null,
      origin: () => origin,
      overReload: new OverReload(memoryStore()),
    });
    expect(right.own).toBeNull();
    expect(editor.owns.left?.x.max).toBe(2956);
    expect(editor.owns.right).toBeUndefined();
  });

  it('outlives its view with every step, once the hand has been quiet for a moment', () => {
    const { editor, store } = editorOn();
    editor.nudge('x.max', -4);
    editor.nudge('x.max', -4);
    expect(editorOn(store).editor.own).toBeNull();
    vi.advanceTimersByTime(1000);
    const again = editorOn(store).editor;
    expect(again.own?.x.max).toBe(2952);
    again.undo();
    again.undo();
    expect([again.own, again.canUndo, again.canRedo]).toEqual([null, false, true]);
  });

  it('takes a whole mapping that fits, and refuses one that does not', () => {
    const { editor } = editorOn();
    expect(editor.take({ ...now, x: { min: 5, centre: 2000, max: 4095 } }, takenFrom({}))).toBe(true);
    expect(editor.take({ ...now, x: { min: -5, centre: 2000, max: 4095 } }, takenFrom({}))).toBe(false);
    expect(editor.own?.x.min).toBe(5);
  });
});

/** A kept mapping of the surveyed pad, but for what is given. */
function takenFrom(part: Partial<Taken>): Taken {
  return { by: 'kept', name: 'Soft spring', pad: serial('bench-1'), domain: 'sensor', ...part };
}

describe('the source of yours', () => {
  it('is the survey until something is taken, and again before it once that is undone', () => {
    const { editor } = editorOn();
    editor.nudge('x.max', -4);
    expect([editor.origin, editor.doubt]).toEqual([origin, null]);
    editor.take(now, takenFrom({ pad: null }));
    editor.nudge('x.max', -4);
    expect(editor.origin.pad).toBeNull();
    expect(editor.doubt).toMatch(/Soft spring, which does not say of which pad/u);
    editor.undo();
    editor.undo();
    expect([editor.origin, editor.doubt]).toEqual([origin, null]);
  });

  it('is never another pad: the refusal names both, and what was stays', () => {
    const { editor } = editorOn();
    expect(editor.take(now, takenFrom({ pad: serial('other-2') }))).toBe(false);
    expect(editor.refusal?.problem.says).toMatch(/other-2.*bench-1/u);
    expect(editor.own).toBeNull();
  });

  it('is never counts of another meaning', () => {
    const { editor } = editorOn();
    expect(editor.take(now, takenFrom({ domain: 'reported' }))).toBe(false);
    expect(editor.refusal?.problem.says).toMatch(/reported counts, the survey has sensor counts/u);
  });

  it('outlives a reload with the numbers', () => {
    const { editor, store } = editorOn();
    editor.nudge('x.max', -4);
    editor.take(now, takenFrom({ by: 'file', name: 'old.json', pad: null }));
    editor.flush();
    const again = editorOn(store).editor;
    expect(again.own?.taken).toEqual(takenFrom({ by: 'file', name: 'old.json', pad: null }));
    again.undo();
    expect(again.own?.taken).toBeNull();
  });
});
