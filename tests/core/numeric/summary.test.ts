import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { covariance2 } from '../../../core/numeric/covariance.ts';
import { mean } from '../../../core/numeric/mean.ts';
import { median, quantile, quantileSorted } from '../../../core/numeric/quantile.ts';
import { standardDeviation, variance } from '../../../core/numeric/variance.ts';
import { expectWithin } from '../../support/expect-close.ts';

const seed = 20_261_127;
const counts = fc.array(fc.integer({ min: -65_536, max: 65_536 }), { minLength: 2, maxLength: 60 });

describe('mean and variance', () => {
  it('are those of a small example', () => {
    expect(mean([2, 4, 4, 4, 5, 5, 7, 9])).toBe(5);
    expectWithin(variance([2, 4, 4, 4, 5, 5, 7, 9]), 32 / 7, 1e-14);
    expectWithin(standardDeviation([3, 5]), Math.SQRT2, 1e-15);
  });

  it('state nothing without data', () => {
    expect(mean([])).toBeNaN();
    expect(variance([4])).toBeNaN();
    expect(standardDeviation([])).toBeNaN();
  });

  it('follow a shift and a scale of the values, whatever their order', () => {
    fc.assert(
      fc.property(
        counts,
        fc.integer({ min: -1e6, max: 1e6 }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (values, by, times) => {
          const moved = values.map((value) => times * value + by).reverse();
          const size = 1e6 + 1e6 * times;
          expectWithin(mean(moved), times * mean(values) + by, 1e-12 * size);
          expectWithin(
            variance(moved),
            times * times * variance(values),
            1e-9 * (1 + times * times * variance(values)),
          );
        },
      ),
      { seed },
    );
  });
});

describe('covariance2', () => {
  it('is that of a small example, symmetric in the axes', () => {
    const found = covariance2([1, 2, 3, 8, 5, 5])!;
    expect(found).toEqual({ xx: 4, xy: 3, yy: 9 });
    expect(covariance2([2, 1, 8, 3, 5, 5])).toEqual({ xx: 9, xy: 3, yy: 4 });
  });

  it('holds the variances of each axis and of their sum', () => {
    fc.assert(
      fc.property(counts, (values) => {
        const pairs = values.flatMap((x, i) => [x, values[(i * 7 + 3) % values.length]!]);
        const xs = pairs.filter((_, i) => i % 2 === 0);
        const ys = pairs.filter((_, i) => i % 2 === 1);
        const { xx, xy, yy } = covariance2(pairs)!;
        const scale = 1 + xx + yy;
        expectWithin(xx, variance(xs), 1e-12 * scale);
        expectWithin(yy, variance(ys), 1e-12 * scale);
        expectWithin(xx + yy + 2 * xy, variance(xs.map((x, i) => x + ys[i]!)), 1e-11 * scale);
      }),
      { seed },
    );
  });

  it('is null with fewer than two pairs', () => {
    expect(covariance2([])).toBeNull();
    expect(covariance2([1, 2])).toBeNull();
  });
});

describe('quantiles', () => {
  it('lie between order statistics as definition 7 says', () => {
    // Hyndman and Fan, type 7: position (n − 1)p counted from 0.
    expect(quantileSorted([10, 20, 30, 40], 0.25)).toBe(17.5);
    expect(quantileSorted([10, 20, 30, 40], 1)).toBe(40);
    expect(quantileSorted([10], 0.3)).toBe(10);
    expect(median([9, 1, 4])).toBe(4);
    expect(median([9, 1, 4, 5])).toBe(4.5);
  });

  it('leave the values as they are', () => {
    const values = Object.freeze([3, 1, 2]);
    expect(quantile(values, 0.5)).toBe(2);
    expect(values).toEqual([3, 1, 2]);
  });

  it('state nothing without values or outside [0, 1]', () => {
    expect(median([])).toBeNaN();
    expect(quantileSorted([1, 2], 1.01)).toBeNaN();
    expect(quantileSorted([1, 2], NaN)).toBeNaN();
  });

  it('rise with p and have at least the share p of the values at or below', () => {
    fc.assert(
      fc.property(
        counts,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (values, p, q) => {
          const [low, high] = p < q ? [p, q] : [q, p];
          expect(quantile(values, low)).toBeLessThanOrEqual(quantile(values, high));
          const below = values.filter((value) => value <= quantile(values, high)).length;
          expect(below).toBeGreaterThanOrEqual(Math.floor(high * (values.length - 1)) + 1);
        },
      ),
      { seed },
    );
  });
});
