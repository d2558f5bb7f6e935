import quantile from '@stdlib/stats-base-dists-beta-quantile';

/**
 * Quantile of the beta distribution with shapes `a` and `b`: the share it stays below with probability `p`.
 * NaN for p outside [0, 1] or shapes not above 0. Source: @stdlib.
 */
export function betaQuantile(p: number, a: number, b: number): number {
  return quantile(p, a, b);
}
