import { betaOdds } from './beta-odds.ts';

/**
 * Quantile of the beta distribution with shapes `a` and `b`: the share it stays below with probability `p`. To about 14 digits.
 * NaN for p outside [0, 1] or shapes not above 0. Held against SciPy, closed forms and printed tables of F in the tests.
 */
export function betaQuantile(p: number, a: number, b: number): number {
  if (!(p >= 0 && p <= 1 && a > 0 && b > 0)) return NaN;
  if (p === 0 || p === 1) return p;
  const odds = betaOdds(p, 1 - p, a, b);
  return odds > 1 ? 1 / (1 + 1 / odds) : odds / (1 + odds);
}
