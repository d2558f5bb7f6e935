import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { overlappingAllanDeviation } from '../../../core/numeric/allan.ts';
import { mean } from '../../../core/numeric/mean.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { expectRelative, expectWithin } from '../../support/expect-close.ts';

const columns = fc.array(
  fc.integer({ min: -4096, max: 4096 }).map((value) => value / 16),
  { minLength: 2, maxLength: 40 },
);
const seeded = { seed: 20261125 };

/** The definition word for word: means of m neighbours, every pair of adjoining means. */
function byDefinition(values: readonly number[], m: number): number {
  const means = Array.from({ length: values.length - m + 1 }, (_, j) => mean(values.slice(j, j + m)));
  const pairs = means.slice(m).map((later, j) => later - means[j]!);
  return Math.sqrt(pairs.reduce((sum, d) => sum + d * d, 0) / (2 * pairs.length));
}

describe('overlapping Allan deviation', () => {
  it('is the definition, for every factor that the values allow', () => {
    fc.assert(
      fc.property(columns, (values) => {
        for (let m = 1; 2 * m <= values.length; m += 1) {
          expectWithin(overlappingAllanDeviation(values, m)!, byDefinition(values, m), 1e-10);
        }
      }),
      seeded,
    );
  });

  it('does not change when all values move, and scales with them', () => {
    fc.assert(
      fc.property(
        columns,
        fc.integer({ min: -1000, max: 1000 }),
        fc.integer({ min: 1, max: 64 }),
        (values, by, times) => {
          const moved = values.map((value) => value * times + by);
          expectWithin(overlappingAllanDeviation(moved, 1)!, times * overlappingAllanDeviation(values, 1)!, 1e-8);
        },
      ),
      seeded,
    );
  });

  it('falls with the root of the factor for white noise', () => {
    const random = createRandom(5);
    const noise = Float64Array.from({ length: 100_000 }, () => 2048 + 3 * random.normal());
    for (const factor of [1, 4, 16, 64]) {
      expectRelative(overlappingAllanDeviation(noise, factor)!, 3 / Math.sqrt(factor), 0.05);
    }
  });

  it('rises with the factor for a steady drift: slope times factor over root two', () => {
    const drift = Float64Array.from({ length: 1000 }, (_, i) => 1e6 + 0.25 * i);
    for (const factor of [1, 10, 500]) {
      expectRelative(overlappingAllanDeviation(drift, factor)!, (0.25 * factor) / Math.SQRT2, 1e-9);
    }
  });

  it('is 0 for values that never change', () => {
    expect(overlappingAllanDeviation(new Float64Array(100).fill(127), 10)).toBe(0);
  });

  it('says nothing of too few values, of factors that are no whole number above 0, and of values that are no number', () => {
    for (const factor of [0, -1, 1.5, NaN, Infinity, 3]) {
      expect(overlappingAllanDeviation([1, 2, 3, 4, 5], factor)).toBeNull();
    }
    expect(overlappingAllanDeviation([], 1)).toBeNull();
    expect(overlappingAllanDeviation([1], 1)).toBeNull();
    expect(overlappingAllanDeviation([1, NaN, 3], 1)).toBeNull();
    expect(overlappingAllanDeviation([1, Infinity, 3], 1)).toBeNull();
  });
});
