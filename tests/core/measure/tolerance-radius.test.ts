import { describe, expect, it } from 'vitest';
import { toleranceRadius } from '../../../core/measure/tolerance-radius.ts';
import { toleranceFactor } from '../../../core/numeric/tolerance-factor.ts';
import { makeEvidence, type DwellWish } from '../../support/make-evidence.ts';

/** A deflection is the difference from 2048 in thousands of counts, the same on all sides. */
const axis = { min: 1048, centre: 2048, max: 3048 };
const mapping = { x: axis, y: axis };

/** Twelve rests 6 counts right of the centre, twelve 6 left of it: the variance along x is 24 · 36 / 23. */
const pairs = Array.from({ length: 24 }, (_, i): DwellWish => ({ point: { x: i % 2 === 0 ? 2054 : 2042, y: 2048 } }));
const SPREAD = (24 * 36) / 23;

describe('toleranceRadius', () => {
  it('is the region that holds the releases, its covariance widened by the rounding of a count', () => {
    const radius = toleranceRadius(makeEvidence({ dwells: pairs }), mapping);
    expect(radius).toBeCloseTo((toleranceFactor(24)! * Math.sqrt(SPREAD + 1 / 12)) / 1000, 12);
  });

  it('adds how far the noise of one dwell carries the output from its rest point', () => {
    const noisy = { ...pairs[0]!, readings: [2054, 2048, 2057, 2052, 2053, 2047] };
    const radius = toleranceRadius(makeEvidence({ dwells: [noisy, ...pairs.slice(1)] }), mapping);
    expect(radius).toBeCloseTo((toleranceFactor(24)! * Math.sqrt(SPREAD + 1 / 12) + 5) / 1000, 12);
  });

  it('widens each axis by its own step', () => {
    const still = Array.from({ length: 24 }, (): DwellWish => ({ point: { x: 2048, y: 2048 } }));
    const radius = (step: { x: number; y: number }) =>
      toleranceRadius({ ...makeEvidence({ dwells: still }), step }, mapping);
    expect(radius({ x: 8, y: 1 })).toBeCloseTo((toleranceFactor(24)! * 8) / Math.sqrt(12) / 1000, 12);
    expect(radius({ x: 1, y: 4 })).toBeCloseTo((toleranceFactor(24)! * 4) / Math.sqrt(12) / 1000, 12);
  });

  it('counts where the mean rest stands', () => {
    const aside = pairs.map(({ point }) => ({ point: { x: point.x + 100, y: point.y } }));
    const radius = toleranceRadius(makeEvidence({ dwells: aside }), mapping);
    expect(radius).toBeCloseTo((100 + toleranceFactor(24)! * Math.sqrt(SPREAD + 1 / 12)) / 1000, 12);
  });

  it('is never less than the largest deflection seen', () => {
    // One of 24 rests stands 240 counts aside: the mean by 10, S = 2400, and the region ends at 10 + 4.2 · 49 counts.
    const outlier = Array.from({ length: 24 }, (_, i): DwellWish => ({ point: { x: i === 0 ? 2288 : 2048, y: 2048 } }));
    expect(10 + toleranceFactor(24)! * Math.sqrt(2400 + 1 / 12)).toBeLessThan(240);
    expect(toleranceRadius(makeEvidence({ dwells: outlier }), mapping)).toBe(0.24);
  });

  it('waits for the releases that are needed, twelve unless the evidence says otherwise', () => {
    const of = (count: number, releasesNeeded?: number) => {
      const evidence = makeEvidence({ dwells: pairs.slice(0, count) });
      return toleranceRadius(releasesNeeded === undefined ? evidence : { ...evidence, releasesNeeded }, mapping);
    };
    expect(of(11)).toBeNull();
    expect(of(12)).toBeCloseTo((toleranceFactor(12)! * Math.sqrt((12 * 36) / 11 + 1 / 12)) / 1000, 12);
    expect(of(23, 24)).toBeNull();
    // No table has a factor for fewer than twelve, whatever is asked for.
    expect(of(6, 5)).toBeNull();
    expect(of(24, 24)).not.toBeNull();
    expect(toleranceRadius(makeEvidence({}), mapping)).toBeNull();
  });
});
