import quantile from '@stdlib/stats-base-dists-t-quantile';

/**
 * Quantile of Student's t: the value that a t variable with `degrees` of freedom stays below with probability `p`.
 * For a two-sided 95 % interval take p = 0.975. Infinite degrees give the normal quantile.
 * NaN for p outside [0, 1] or degrees not above 0; within 1e-6 of one half the answer may be 0.
 * Source: @stdlib; JCGM 100 Table G.2 in the tests.
 */
export function studentT(p: number, degrees: number): number {
  // The library knows no infinite degrees; from here on t and the normal distribution agree to rounding.
  return quantile(p, Math.min(degrees, 1e12));
}
