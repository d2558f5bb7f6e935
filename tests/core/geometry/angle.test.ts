import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleOf, wrapDegrees } from '../../../core/geometry/angle.ts';
import { largestGap } from '../../../core/geometry/angular-gap.ts';
import { meanDirection } from '../../../core/geometry/mean-direction.ts';
import { expectWithin } from '../../support/expect-close.ts';

const seed = 20_261_128;

describe('angles', () => {
  it('go counter-clockwise from +x', () => {
    expect([angleOf(1, 0), angleOf(0, 1), angleOf(-1, 0), angleOf(0, -1)]).toEqual([0, 90, 180, 270]);
    expect(angleOf(0, 0)).toBe(0);
  });

  it('are in [0, 360), never −0 and never 360 by rounding', () => {
    expect(Object.is(angleOf(1, -0), 0)).toBe(true);
    expect(angleOf(1, -1e-20)).toBe(0);
    expect(wrapDegrees(-1e-16)).toBe(0);
    expect(Object.is(wrapDegrees(-720), 0)).toBe(true);
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (angle) => {
        expect(wrapDegrees(angle)).toBeGreaterThanOrEqual(0);
        expect(wrapDegrees(angle)).toBeLessThan(360);
      }),
      { seed },
    );
  });
});

describe('largestGap', () => {
  it('is the widest empty angle, across 0° too', () => {
    expectWithin(largestGap([1, 0, 0, 1, -1, 0], 0, 0), 180, 1e-12);
    expectWithin(largestGap([1, 1, -1, 1, -1, -1, 1, -1], 0, 0), 90, 1e-12);
    expectWithin(largestGap([5, 6, 5, 4, 4, 5], 5, 5), 180, 1e-12);
  });

  it('is 360° for one direction or none', () => {
    expect(largestGap([], 0, 0)).toBe(360);
    expect(largestGap([3, 3], 3, 3)).toBe(360);
    expect(largestGap([1, 0, 2, 0], 0, 0)).toBe(360);
  });
});

describe('meanDirection', () => {
  it('crosses 0° where a plain mean would not', () => {
    const found = meanDirection([350, 20])!;
    expectWithin(found.angle, 5, 1e-12);
    expectWithin(found.resultant, Math.cos((15 * Math.PI) / 180), 1e-14);
  });

  it('counts a weight as so many equal angles', () => {
    const weighted = meanDirection([10, 80], [3, 1])!;
    const repeated = meanDirection([10, 10, 10, 80])!;
    expectWithin(weighted.angle, repeated.angle, 1e-12);
    expectWithin(weighted.resultant, repeated.resultant, 1e-14);
  });

  it('is null where the angles cancel out, and without angles', () => {
    expect(meanDirection([0, 180])).toBeNull();
    expect(meanDirection([0, 120, 240])).toBeNull();
    expect(meanDirection([])).toBeNull();
  });
});
