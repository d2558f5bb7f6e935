import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { percentText } from '../../../core/zones/one-zone.ts';
import { checkInner, checkOuter, readPercent } from '../../../renderer/stick/zone.ts';

describe('the zone asked about', () => {
  it('refuses edges out of order or out of range in one sentence', () => {
    const scaled = { shape: 'scaledRadial', inner: 0.1, outer: 0.9 } as const;
    expect(checkInner(scaled, 0.9)).toContain('less than the outer edge, 90 %');
    expect(checkOuter(scaled, 0.1)).toContain('more than the inner edge, 10 %');
    expect(checkOuter(scaled, 1.6)).toContain('at most 150 %');
    expect(checkInner({ ...scaled, shape: 'radial' }, -0.01)).toContain('0 to less than 150 %');
    expect([checkInner(scaled, 0), checkOuter(scaled, 1.5), checkInner({ ...scaled, shape: 'axial' }, 1)]).toEqual([
      null,
      null,
      null,
    ]);
  });
});

describe('readPercent', () => {
  it('reads what hands write', () => {
    expect(['8', ' 8.5 %', '8,5', '.5', '0'].map(readPercent)).toEqual([0.08, 0.085, 0.085, 0.005, 0]);
  });

  it('takes nothing else for a number', () => {
    expect(['', 'abc', '8 9', '1e3', 'NaN', '%', '8%%', '--1'].map(readPercent)).toEqual(Array(8).fill(null));
  });

  it('reads back what percentText writes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 15_000 }), (steps) => {
        expect(readPercent(percentText(steps / 10_000))).toBeCloseTo(steps / 10_000, 9);
      }),
      { seed: 21 },
    );
  });
});
