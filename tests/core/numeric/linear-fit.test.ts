import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearFit, type LinearFit } from '../../../core/numeric/linear-fit.ts';
import { standardDeviation } from '../../../core/numeric/variance.ts';
import { expectRelative, expectWithin } from '../../support/expect-close.ts';

const seed = 20_261_135;
const count = fc.integer({ min: -4096, max: 4096 });
const pairs = fc
  .array(fc.tuple(count, count), { minLength: 3, maxLength: 40 })
  .filter((points) => new Set(points.map(([x]) => x)).size > 1);

function fitPairs(points: readonly (readonly [number, number])[]): LinearFit {
  return linearFit(
    points.map(([x]) => x),
    points.map(([, y]) => y),
  )!;
}

describe('linearFit', () => {
  it('is that of a small example worked by hand', () => {
    // Means 3 and 4, Σdx² = 10, Σdxdy = 6, residuals −0.8, 0.6, 1, −0.6, −0.2: sum of squares 2.4.
    const fit = linearFit([1, 2, 3, 4, 5], [2, 4, 5, 4, 5])!;
    expectWithin(fit.slope, 0.6, 1e-15);
    expectWithin(fit.intercept, 2.2, 1e-14);
    expectWithin(fit.residualDeviation!, Math.sqrt(0.8), 1e-14);
    expectWithin(fit.slopeError!, Math.sqrt(0.08), 1e-14);
    expectWithin(fit.interceptError!, Math.sqrt(0.8 * (1 / 5 + 9 / 10)), 1e-14);
    expect(fit.degrees).toBe(3);
  });

  it('has no error to state for two points, and none where the line is exact', () => {
    expect(linearFit([0, 2], [1, 5])).toEqual({
      slope: 2,
      intercept: 1,
      slopeError: null,
      interceptError: null,
      residualDeviation: null,
      degrees: 0,
    });
    expect(linearFit([0, 1, 2], [1, 3, 5])?.slopeError).toBe(0);
  });

  it('follows a shift and a scale of either axis, whatever the order of the points', () => {
    // Powers of two and whole shifts: the moved points are exact, and only the fit can round.
    const scale = fc.integer({ min: -3, max: 3 }).map((power) => 2 ** power);
    fc.assert(
      fc.property(pairs, count, count, scale, scale, (points, right, up, wide, high) => {
        const fit = fitPairs(points);
        const moved = fitPairs(points.map(([x, y]) => [wide * x + right, high * y + up] as const).reverse());
        const slope = (fit.slope * high) / wide;
        const spread = standardDeviation(points.map(([, y]) => y)) / standardDeviation(points.map(([x]) => x));
        const rounding = 1e-12 * (1 + (spread * high) / wide);
        expectWithin(moved.slope, slope, rounding);
        expectWithin(moved.intercept, high * fit.intercept + up - slope * right, rounding * 4096 * (1 + wide + high));
        expectWithin(moved.residualDeviation!, high * fit.residualDeviation!, 1e-8 * high);
      }),
      { seed },
    );
  });

  it('keeps its line when every point is told twice, and errs less', () => {
    fc.assert(
      fc.property(pairs, (points) => {
        const n = points.length;
        const once = fitPairs(points);
        const twice = fitPairs([...points, ...points]);
        const size = 1 + Math.abs(once.slope);
        expectWithin(twice.slope, once.slope, 1e-11 * size);
        expectWithin(twice.intercept, once.intercept, 1e-7 * size);
        if (once.slopeError! > 1e-6) {
          // Twice the squares, twice the spread of x: only the degrees of freedom differ.
          expectRelative(twice.slopeError!, once.slopeError! * Math.sqrt((n - 2) / (2 * n - 2)), 1e-7);
        }
      }),
      { seed },
    );
  });

  it('leaves residuals that cancel out, alone and against x', () => {
    fc.assert(
      fc.property(pairs, (points) => {
        const { slope, intercept } = fitPairs(points);
        const middle = points.reduce((sum, [x]) => sum + x, 0) / points.length;
        const left = points.map(([x, y]) => ({ x: x - middle, residual: y - intercept - slope * x }));
        const size = (1 + Math.abs(slope)) * points.length;
        expectWithin(
          left.reduce((sum, { residual }) => sum + residual, 0),
          0,
          1e-8 * size,
        );
        expectWithin(
          left.reduce((sum, { x, residual }) => sum + x * residual, 0),
          0,
          1e-4 * size,
        );
      }),
      { seed },
    );
  });

  it('is null where no line can be stated', () => {
    expect(linearFit([1], [1])).toBeNull();
    expect(linearFit([2, 2, 2], [1, 2, 3])).toBeNull();
    expect(linearFit([1, 2, 3], [1, 2])).toBeNull();
    expect(linearFit([1, NaN, 3], [1, 2, 3])).toBeNull();
  });
});
