import { betaQuantile } from './beta-quantile.ts';

/**
 * One-sided 95 % upper bound of a share of which `k` were seen in `n` independent trials (leaking releases of n):
 * the 0.95 quantile of Beta(k + 1, n − k), and 1 where k = n. 0 of 24 gives 0.117; below 5 % takes 59 trials without one.
 * Null unless n is a whole number above 0 and k one from 0 to n.
 * Source: Clopper and Pearson, Biometrika 26 (1934) 404 (exact, conservative).
 */
export function exactUpperBound95(k: number, n: number): number | null {
  if (!Number.isInteger(n) || !Number.isInteger(k) || n < 1 || k < 0 || k > n) return null;
  return k === n ? 1 : betaQuantile(0.95, k + 1, n - k);
}
