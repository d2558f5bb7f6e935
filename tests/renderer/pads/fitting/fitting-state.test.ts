import { describe, expect, test } from 'vitest';
import { FittingState, worstRatio } from '../../../../renderer/pads/fitting/fitting-state.svelte.ts';
import type { WindowMean } from '../../../../renderer/pads/fitting/window-mean.ts';
import { listAxes } from '../../../../renderer/pads/axis-list.ts';
import { smallLayout } from '../../support/small-pad.ts';

const [x, y] = listAxes(smallLayout) as [ReturnType<typeof listAxes>[number], ReturnType<typeof listAxes>[number]];

function reading(mean: number): WindowMean {
  return { mean, sigma: null, peakToPeak: 0, readings: 100 };
}

describe('the fitting aid', () => {
  test('aims at the middle of the field until another target is set', () => {
    const fitting = new FittingState();
    expect(fitting.targetOf(x)).toBe(127.5);
    expect(fitting.aimAt(x, 120)).toBe(true);
    expect(fitting.targetOf(x)).toBe(120);
    expect(fitting.targetOf(y)).toBe(127.5);
    fitting.aimAtMiddle(x);
    expect(fitting.targetOf(x)).toBe(127.5);
  });

  test('refuses a target outside of the field and keeps the old one', () => {
    const fitting = new FittingState();
    for (const target of [-1, 256, Number.NaN, Number.POSITIVE_INFINITY]) expect(fitting.aimAt(x, target)).toBe(false);
    expect(fitting.targetOf(x)).toBe(127.5);
  });

  test('holds the reading as it is, to the count', () => {
    const fitting = new FittingState();
    fitting.hold(fitting.judge(x, reading(131.4)));
    expect(fitting.targetOf(x)).toBe(131);
    fitting.hold(fitting.judge(x, null));
    expect(fitting.targetOf(x)).toBe(131);
  });

  test('has one tolerance for both axes of a stick, never 0 or less', () => {
    const fitting = new FittingState();
    expect(fitting.toleranceOf(x)).toBe(1);
    expect(fitting.setTolerance(x, 2.5)).toBe(true);
    expect(fitting.toleranceOf(y)).toBe(2.5);
    for (const counts of [0, -1, Number.NaN, 300]) expect(fitting.setTolerance(x, counts)).toBe(false);
    expect(fitting.toleranceOf(x)).toBe(2.5);
  });

  test('a pad with other field limits has targets of its own', () => {
    const fitting = new FittingState();
    fitting.aimAt(x, 200);
    expect(fitting.targetOf({ ...x, maximum: 4095 })).toBe(2047.5);
    expect(fitting.targetOf(x)).toBe(200);
  });

  test('the tone follows the worse axis, and there is none while an axis has no reading', () => {
    const fitting = new FittingState();
    fitting.setTolerance(x, 2);
    const fits = [fitting.judge(x, reading(128.5)), fitting.judge(y, reading(133.5))];
    expect(worstRatio(fits)).toBe(3);
    expect(worstRatio([fits[0]!, fitting.judge(y, null)])).toBeNull();
    expect(worstRatio([])).toBeNull();
  });
});
