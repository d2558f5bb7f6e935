import { describe, expect, it } from 'vitest';
import { findNoisyJoint } from '../../../core/findings/find-noisy-joint.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { AxisTravel } from '../../../core/measure/travel-measure.ts';
import { HALF, makeSubject, makeTravel, soundTravel } from './make-subject.ts';

function find(x: number | null, y: number | null, below = { x: false, y: false }) {
  const rest = { ...makeSubject().report.rest!, noise: { x, y }, noiseBelowStep: below };
  return findNoisyJoint(makeSubject({ report: { rest } }), defaultLimits);
}

describe('findNoisyJoint', () => {
  it('takes the worse axis in shares of the half travel, known to 5 % and to the rounding of a count', () => {
    const found = find(3, 4)!;
    expect(found).toMatchObject({ value: 4 / HALF, limit: 0.002, decision: 'fail', severity: 'fault' });
    expect(found.u95).toBeCloseTo(Math.hypot((0.05 * 4) / HALF, 1 / Math.sqrt(12) / HALF), 12);
    expect(found.says).toContain('the y reading of the left stick is restless by 4.00 counts');
    expect(found.for).toEqual(['The other axis has 3.00 counts.']);
  });

  it('decides by 0.2 % of the half travel', () => {
    // 2.5 counts; U is √((0.05 σ)² + 1/12) counts.
    expect([2.84, 2.81, 2.2, 2.17].map((noise) => find(noise, noise)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
  });

  it('decides by twice the other axis where that is the further beyond its limit', () => {
    const found = find(2.4, 1)!;
    expect(found).toMatchObject({ limit: 2, decision: 'fail' });
    expect(found.value).toBeCloseTo(2.4, 12);
    expect(found.u95).toBeCloseTo(Math.SQRT2 * 0.05 * 2.4, 12);
    expect([2.16, 2.14, 1.88, 1.86].map((noise) => find(noise, 1)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    // 6 counts are 2.4 times the one limit, and 2 times the other axis only the other one.
    expect(find(6, 3)).toMatchObject({ limit: 0.002 });
  });

  it('takes an axis whose noise its step hides for no measure of the other', () => {
    expect(find(1, 0.41)?.limit).toBe(2);
    expect(find(1, 0.39)?.limit).toBe(0.002);
    expect(find(1, null)).toMatchObject({ limit: 0.002, for: [] });
  });

  it('doubles the rounding of an axis that only goes to and fro between two counts', () => {
    const found = find(3, 3, { x: true, y: false })!;
    expect(found.u95).toBeCloseTo(Math.hypot(0.05 * 3, 2 / Math.sqrt(12)) / HALF, 12);
    expect(found.for).toEqual([]);
  });

  it('blames the supply for two restless axes, but not where the track itself is unsteady', () => {
    const against = (unsteady: AxisTravel['unsteady'], x = 3, y = 4) => {
      const rest = { ...makeSubject().report.rest!, noise: { x, y } };
      const travel = makeTravel({ y: { ...soundTravel, unsteady } });
      return findNoisyJoint(makeSubject({ report: { rest, travel } }), defaultLimits)?.against;
    };
    const supply = ['Both axes are restless: look at the supply and the cable first.'];
    expect(against([])).toEqual(supply);
    expect(against(null)).toEqual(supply);
    expect(against([{ from: 2000, to: 2050, times: 6 }])).toEqual([]);
    // 2.4 counts are within the limit of 2.5.
    expect(against([], 2.4, 4)).toEqual([]);
    expect(find(3, 4)?.against).toEqual(supply);
  });
});
