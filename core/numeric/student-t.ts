import { betaOdds } from './beta-odds.ts';

/** From here on t and the normal distribution agree to rounding. */
const endless = 1e17;

/**
 * Quantile of Student's t: the value that a t variable with `degrees` of freedom stays below with probability `p`. To about 14 digits.
 * For a two-sided 95 % interval take p = 0.975. Infinite degrees give the normal quantile.
 * NaN for p outside [0, 1] or degrees not above 0; beyond 1e150 it is no longer told from infinity.
 * Source: ν/(ν + t²) is a beta variable with shapes ν/2 and ½ (DLMF 8.17, Abramowitz and Stegun 26.7.1); JCGM 100 Table G.2 in the tests.
 */
export function studentT(p: number, degrees: number): number {
  if (!(p >= 0 && p <= 1 && degrees > 0)) return NaN;
  const outside = 2 * Math.min(p, 1 - p);
  if (outside === 0) return p === 0 ? -Infinity : Infinity;
  if (outside === 1) return 0;
  const finite = Math.min(degrees, endless);
  const t = Math.sqrt(finite / betaOdds(outside, 1 - outside, finite / 2, 0.5));
  return p < 0.5 ? -t : t;
}
