import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { covariance2 } from '../../../core/numeric/covariance.ts';
import { mean } from '../../../core/numeric/mean.ts';
import { median, quantile, quantileSorted } from '../../../core/numeric/quantile.ts';
import { standardDeviation, variance } from '../../../core/numeric/variance.ts';
import { expectWithin } from '../../support/expect-close.ts';
import { anyMove, movePoints, pairsOf } from '../../support/point-sets.ts';

const seed = 20_261_127;
const counts = fc.array(fc.integer({ min: -65_536, max: 65_536 }), { minLength: 2, maxLength: 60 });
const smallCount = fc.integer({ min: -4096, max: 4096 });

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

  it('turns with the points and does not mind shifts, order or a scale but its square', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(smallCount, smallCount), { minLength: 2, maxLength: 40 }),
        anyMove,
        (tuples, move) => {
          const points = tuples.flat();
          const before = covariance2(points)!;
          const after = covariance2(pairsOf(movePoints(points, move)).toReversed().flat())!;
          const c = move.scale * Math.cos((move.angle * Math.PI) / 180);
          const s = move.scale * Math.sin((move.angle * Math.PI) / 180);
          const { xx, xy, yy } = before;
          // The shift of up to 5,000 costs digits where the points are scaled down.
          const tolerance = 1e-9 * (move.scale ** 2 * (1 + xx + yy) + move.scale * Math.sqrt(xx + yy) + 1e-6);
          expectWithin(after.xx, c * c * xx - 2 * c * s * xy + s * s * yy, tolerance);
          expectWithin(after.yy, s * s * xx + 2 * c * s * xy + c * c * yy, tolerance);
          expectWithin(after.xy, c * s * (xx - yy) + (c * c - s * s) * xy, tolerance);
        },
      ),
      { seed },
    );
  });

  it('of pairs told twice has twice the squares over 2n − 1', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(smallCount, smallCount), { minLength: 2, maxLength: 40 }), (tuples) => {
        const n = tuples.length;
        const { xx, xy, yy } = covariance2(tuples.flat())!;
        const twice = covariance2([...tuples, ...tuples].flat())!;
        const share = (2 * (n - 1)) / (2 * n - 1);
        const tolerance = 1e-11 * (1 + xx + yy);
        expectWithin(twice.xx, share * xx, tolerance);
        expectWithin(twice.xy, share * xy, tolerance);
        expectWithin(twice.yy, share * yy, tolerance);
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

  it('follow a shift and a scale, are mirrored by a mirror, and do not mind order', () => {
    fc.assert(
      fc.property(
        counts,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.integer({ min: -1e6, max: 1e6 }),
        (values, p, times, by) => {
          const size = 1e6 + 1e6 * times;
          const moved = values.map((value) => times * value + by).reverse();
          expectWithin(quantile(moved, p), times * quantile(values, p) + by, 1e-12 * size);
          const mirrored = values.map((value) => -value);
          expectWithin(quantile(mirrored, 1 - p), -quantile(values, p), 1e-9);
        },
      ),
      { seed },
    );
  });

  it('keep both ends, and the median too, when every value is told twice', () => {
    fc.assert(
      fc.property(counts, (values) => {
        const twice = [...values, ...values];
        expect(quantile(twice, 0)).toBe(Math.min(...values));
        expect(quantile(twice, 1)).toBe(Math.max(...values));
        expect(median(twice)).toBe(median(values));
      }),
      { seed },
    );
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
