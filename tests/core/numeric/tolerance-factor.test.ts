import { describe, expect, it } from 'vitest';
import { toleranceFactor } from '../../../core/numeric/tolerance-factor.ts';
import { toleranceTable } from '../../../core/numeric/tolerance-table.ts';
import { toleranceEntry } from '../../long/tolerance-table.ts';

describe('the bivariate tolerance factor', () => {
  it.each([12, 24, 60])('for %d releases comes out again with another seed, within the errors of both', (n) => {
    const again = toleranceEntry(n, 20_000, 99);
    const [, c, standardError] = toleranceTable.find(([size]) => size === n)!;
    expect(Math.abs(again.c - c)).toBeLessThan(4 * Math.hypot(standardError, again.standardError));
    expect(standardError).toBeLessThan(0.003);
  });

  it('falls as releases are added, toward the radius that holds 99 % of a known distribution', () => {
    const sizes = Array.from({ length: 400 }, (_, index) => index + 12);
    const factors = sizes.map((n) => toleranceFactor(n)!);
    expect(factors.every((c, index) => index === 0 || c < factors[index - 1]!)).toBe(true);
    expect(toleranceFactor(1e12)).toBeCloseTo(3.0349, 4);
  });

  it.each([42, 110, 600])('between its entries, for %d releases, is what a simulation of that number gives', (n) => {
    const { c, standardError } = toleranceEntry(n, 20_000, 7);
    expect(Math.abs(toleranceFactor(n)! - c)).toBeLessThan(4 * standardError + 0.001);
  });

  it('is null below 12 releases, for which no statement is made', () => {
    expect(toleranceFactor(11)).toBeNull();
    expect(toleranceFactor(Number.NaN)).toBeNull();
  });
});
