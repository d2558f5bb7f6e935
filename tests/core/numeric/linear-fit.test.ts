import { describe, expect, it } from 'vitest';
import { linearFit } from '../../../core/numeric/linear-fit.ts';
import { expectWithin } from '../../support/expect-close.ts';

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

  it('is null where no line can be stated', () => {
    expect(linearFit([1], [1])).toBeNull();
    expect(linearFit([2, 2, 2], [1, 2, 3])).toBeNull();
    expect(linearFit([1, 2, 3], [1, 2])).toBeNull();
    expect(linearFit([1, NaN, 3], [1, 2, 3])).toBeNull();
  });
});
