import { describe, expect, it } from 'vitest';
import { betaQuantile } from '../../../core/numeric/beta-quantile.ts';
import { bisectRising } from '../../../core/numeric/bisect.ts';
import { combineUncertainty } from '../../../core/numeric/combined-uncertainty.ts';
import { gammaTail } from '../../support/gamma-tail.ts';
import { normalCdf } from '../../support/normal-cdf.ts';
import { studentT } from '../../../core/numeric/student-t.ts';
import { expectRelative, expectWithin } from '../../support/expect-close.ts';

describe("Student's t", () => {
  it('has closed forms for 1 and 2 degrees of freedom', () => {
    for (const p of [0.001, 0.1, 0.4, 0.6, 0.975, 0.999]) {
      expectRelative(studentT(p, 1), Math.tan(Math.PI * (p - 0.5)), 1e-12);
      expectRelative(studentT(p, 2), (2 * p - 1) / Math.sqrt(2 * p * (1 - p)), 1e-12);
    }
  });

  it('becomes the normal quantile with endless degrees of freedom', () => {
    expectWithin(studentT(0.975, Infinity), 1.959963984540054, 1e-11);
    expect(studentT(0.5, 5)).toBe(0);
  });

  it('states nothing outside its range', () => {
    expect(studentT(1.1, 5)).toBeNaN();
    expect(studentT(0.9, 0)).toBeNaN();
    expect(studentT(0.9, NaN)).toBeNaN();
  });
});

describe('betaQuantile', () => {
  it('has a closed form where one shape is 1', () => {
    for (const p of [0.01, 0.5, 0.95]) {
      expectRelative(betaQuantile(p, 1, 24), 1 - (1 - p) ** (1 / 24), 1e-12);
      expectRelative(betaQuantile(p, 7, 1), p ** (1 / 7), 1e-12);
    }
  });

  it('states nothing outside its range', () => {
    expect(betaQuantile(-0.1, 1, 1)).toBeNaN();
    expect(betaQuantile(0.5, 0, 1)).toBeNaN();
  });
});

describe('gammaTail', () => {
  it('has closed forms for whole a and for one half', () => {
    for (const x of [0.01, 0.5, 3, 20, 90]) {
      expectRelative(gammaTail(1, x), Math.exp(-x), 1e-13);
      expectRelative(gammaTail(3, x), Math.exp(-x) * (1 + x + (x * x) / 2), 1e-12);
      expectRelative(gammaTail(0.5, x), 2 * normalCdf(-Math.sqrt(2 * x)), 1e-12);
    }
  });

  it('is 1 at 0 and NaN outside its range', () => {
    expect(gammaTail(2, 0)).toBe(1);
    expect(gammaTail(0, 1)).toBeNaN();
    expect(gammaTail(1, -1)).toBeNaN();
  });
});

describe('combineUncertainty', () => {
  it('of a single part is that part, with its degrees of freedom', () => {
    const { value, degrees } = combineUncertainty([{ value: 0.3, degrees: 11 }]);
    expectWithin(value, 0.3, 1e-16);
    expectWithin(degrees, 11, 1e-12);
  });

  it('of two equal parts has the sum of their degrees of freedom', () => {
    const { value, degrees } = combineUncertainty([
      { value: 3, degrees: 5 },
      { value: 3, degrees: 5 },
    ]);
    expectWithin(value, Math.sqrt(18), 1e-14);
    expectWithin(degrees, 10, 1e-12);
  });

  it('of nothing, or of parts that are 0, is 0 and known for certain', () => {
    expect(combineUncertainty([])).toEqual({ value: 0, degrees: Infinity });
    expect(combineUncertainty([{ value: 0, degrees: 3 }])).toEqual({ value: 0, degrees: Infinity });
  });
});

describe('bisectRising', () => {
  it('finds a crossing to the last digit', () => {
    const root = bisectRising((x) => x * x - 2, 0, 2);
    expect(Math.abs(root - Math.SQRT2)).toBeLessThanOrEqual(2 ** -52);
  });
});
