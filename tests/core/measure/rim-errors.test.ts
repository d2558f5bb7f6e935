import { describe, expect, it } from 'vitest';
import { rimErrors } from '../../../core/measure/rim-errors.ts';
import type { DirectionMeasure } from '../../../core/measure/rim-measure.ts';

function at(angle: number, reach: number | null, seen = reach, wish: Partial<DirectionMeasure> = {}): DirectionMeasure {
  return {
    angle,
    x: 1000,
    y: 0,
    reach,
    seen,
    outputAngle: angle,
    spread: null,
    state: 'covered',
    covered: true,
    atLimit: false,
    ...wish,
  };
}

describe('rimErrors', () => {
  it('takes its errors from what a host sees, and least, most and full from the reach', () => {
    // Toward 0° the reach of 1.25 is limited to 1: no error, but the overreach.
    const errors = rimErrors([at(0, 1.25, 1), at(45, 1.125), at(90, 0.5, 0.5, { atLimit: true })]);
    expect(errors).toEqual({
      leastReach: { value: 0.5, angle: 90 },
      overreach: { value: 0.25, angle: 0 },
      meanRadialError: (0 + 0.125 + 0.5) / 3,
      rmsRadialError: Math.sqrt((0.125 ** 2 + 0.5 ** 2) / 3),
      fullReachShare: 2 / 3,
      atLimitShare: 1 / 3,
    });
  });

  it('passes over what is not covered or has no reading', () => {
    const thin = at(5, 3, 3, { covered: false, state: 'thin', atLimit: true });
    const errors = rimErrors([thin, at(10, null, 2), at(15, 2, null), at(20, 0.75)]);
    expect(errors).toEqual({
      leastReach: { value: 0.75, angle: 20 },
      overreach: { value: -0.25, angle: 20 },
      meanRadialError: 0.25,
      rmsRadialError: 0.25,
      fullReachShare: 0,
      atLimitShare: 0,
    });
  });

  it('names the first of equal directions', () => {
    const { leastReach, overreach } = rimErrors([at(30, 0.5), at(60, 0.5), at(90, 1.5), at(120, 1.5)]);
    expect([leastReach?.angle, overreach?.angle]).toEqual([30, 90]);
  });

  it('counts a reach as full that rounding alone keeps below 1', () => {
    expect(rimErrors([at(0, 1), at(5, 1 - 9e-10), at(10, 1 - 2e-9), at(15, 1 - 1e-9)]).fullReachShare).toBe(3 / 4);
  });

  it('states nothing while no direction is covered', () => {
    expect(rimErrors([at(0, 1, 1, { covered: false })])).toEqual({
      leastReach: null,
      overreach: null,
      meanRadialError: null,
      rmsRadialError: null,
      fullReachShare: null,
      atLimitShare: null,
    });
  });
});
