import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chainOf, checkInner, checkOuter, percentText, readPercent, zoneName } from '../../../renderer/stick/zone.ts';
import { parseChain } from '../../../core/zones/parse-chain.ts';

describe('the zone asked about', () => {
  it('is a chain of one stage that the chain reader takes', () => {
    for (const shape of ['axial', 'radial', 'scaledRadial'] as const)
      expect(parseChain(structuredClone(chainOf({ shape, inner: 0.1, outer: 0.9 })))).toMatchObject({ ok: true });
  });

  it('carries an outer edge only where it rescales', () => {
    expect(chainOf({ shape: 'radial', inner: 0.1, outer: 0.9 }).stages).toEqual([{ zone: 'radial', inner: 0.1 }]);
    expect(chainOf({ shape: 'scaledRadial', inner: 0.1, outer: 0.9 }).stages).toEqual([
      { zone: 'scaledRadial', inner: 0.1, outer: 0.9 },
    ]);
  });

  it('has a name that states it', () => {
    expect(zoneName({ shape: 'radial', inner: 0.08, outer: 1 })).toBe('radial 8 %, cut');
    expect(zoneName({ shape: 'scaledRadial', inner: 0.075, outer: 0.95 })).toBe('scaled radial 7.5 to 95 %');
  });

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
