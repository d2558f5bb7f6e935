import { describe, expect, it } from 'vitest';
import { betaOdds } from '../../core/numeric/beta-odds.ts';
import { betaQuantile } from '../../core/numeric/beta-quantile.ts';
import { betaShare } from '../../core/numeric/beta-share.ts';
import { fTail } from '../../core/numeric/f-tail.ts';
import { gammaTail } from '../support/gamma-tail.ts';
import { logExcess } from '../../core/numeric/log-excess.ts';
import { normalCdf } from '../support/normal-cdf.ts';
import { stirlingRemainder } from '../../core/numeric/stirling-remainder.ts';
import { studentT } from '../../core/numeric/student-t.ts';
import { expectRelative, expectWithin } from '../support/expect-close.ts';
import { readGolden } from '../support/read-golden.ts';

const many = readGolden('t_and_beta') as {
  readonly t: [p: number, degrees: number | 'Infinity', t: string][];
  readonly beta: [p: number, a: number, b: number, x: string][];
};

describe('quantiles to full double precision', () => {
  it('agrees on t with 20 digits computed with mpmath to 2e-14', () => {
    expect(many.t).toHaveLength(13);
    for (const [p, degrees, t] of many.t) expectRelative(studentT(p, Number(degrees)), Number(t), 2e-14);
  });

  it('agrees on beta with 20 digits computed with mpmath to 2e-14', () => {
    expect(many.beta).toHaveLength(8);
    for (const [p, a, b, x] of many.beta) expectRelative(betaQuantile(p, a, b), Number(x), 2e-14);
  });

  it('keeps the digits of either side of 1', () => {
    // I(½, ½) at x is 2/π · asin √x: near 1, the other side is (π(1 − p)/2)².
    expectRelative(1 / betaOdds(1 - 1e-12, 1e-12, 0.5, 0.5), (Math.PI * 0.5e-12) ** 2, 1e-14);
    expectRelative(betaOdds(1e-12, 1 - 1e-12, 0.5, 0.5), (Math.PI * 0.5e-12) ** 2, 1e-14);
  });
});

describe('upper critical values of F, NIST e-Handbook 1.3.6.7.3 (printed to 3 decimals)', () => {
  it.each([
    [0.05, 10, [4.965, 4.103, 3.708, 3.478, 3.326, 3.217, 3.135, 3.072, 3.02, 2.978]],
    [0.01, 10, [10.044, 7.559, 6.552, 5.994, 5.636, 5.386, 5.2, 5.057, 4.942, 4.849]],
  ])('beyond %d with %d degrees below and 1 to 10 above (memory)', (tail, below, printed) => {
    const found = printed.map((_, i) => {
      const odds = betaOdds(1 - tail, tail, (i + 1) / 2, below / 2);
      return (odds * below) / (i + 1);
    });
    found.forEach((f, i) => {
      expectWithin(f, printed[i]!, 5.01e-4);
      expectRelative(fTail(f, i + 1, below), tail, 1e-14);
    });
  });
});

describe('the special functions under them', () => {
  it("leave what Stirling's formula leaves of whole and half factorials", () => {
    const logGamma = (x: number): number =>
      (x - 0.5) * Math.log(x) - x + 0.5 * Math.log(2 * Math.PI) + stirlingRemainder(x);
    expectWithin(logGamma(1), 0, 1e-15);
    expectWithin(logGamma(0.5), Math.log(Math.PI) / 2, 1e-15);
    expectRelative(logGamma(11), Math.log(3_628_800), 1e-15);
    expectRelative(logGamma(171), 706.573_062_245_787_5, 1e-15);
  });

  it('take a tangent from the logarithm without loss', () => {
    expectRelative(logExcess(1 + 1e-9, 1e-9), -5e-19 + 1e-27 / 3, 1e-15);
    for (const off of [-0.999, -0.45, -0.39, 0.39, 0.41, 3]) {
      expectRelative(logExcess(1 + off, off), Math.log(1 + off) - off, 1e-14);
    }
  });

  it('hold the binomial sum of a beta with whole shapes, whichever side is asked', () => {
    // I(3, 4) at x is the chance of at least 3 hits of 6: 20x³y³ + 15x⁴y² + 6x⁵y + x⁶.
    for (const x of [1e-9, 0.2, 0.45, 0.9]) {
      const y = 1 - x;
      const sum = 20 * (x * y) ** 3 + 15 * x ** 4 * y * y + 6 * x ** 5 * y + x ** 6;
      expectRelative(betaShare(x, y, 3, 4), sum, 1e-14);
      expectRelative(betaShare(y, x, 4, 3), 1 - sum, 1e-14);
    }
    expect(betaShare(0, 1, 3, 4)).toBe(0);
    expect(betaShare(1, 0, 3, 4)).toBe(1);
    expect(betaShare(0.5, 0.5, 0, 4)).toBeNaN();
  });

  it('give the tail of the normal distribution far out, DLMF 7.2 (computed with mpmath)', () => {
    expectRelative(normalCdf(-1), 0.158_655_253_931_457_05, 1e-15);
    expectRelative(normalCdf(-10), 7.619_853_024_160_527e-24, 2e-14);
    expectRelative(normalCdf(-37), 5.725_571_222_524_577e-300, 2e-13);
    expect(normalCdf(0)).toBe(0.5);
    expect(normalCdf(-Infinity)).toBe(0);
    expect(normalCdf(Infinity)).toBe(1);
    expect(normalCdf(NaN)).toBeNaN();
  });

  it('give the tail of a gamma with a = 1,000 to 12 digits (computed with mpmath)', () => {
    expectRelative(gammaTail(1000, 1400), 8.041_325_408_184_83e-30, 1e-13);
    expect(gammaTail(3, Infinity)).toBe(0);
  });
});
