import { mean } from './mean.ts';

/**
 * Overlapping Allan deviation of evenly timed values at `factor` (m) times their interval, in the unit of the values: the values
 * are averages over the interval τ₀ (for a clock: frequencies; here: counts), with n of them
 * σ²(mτ₀) = Σⱼ (ȳⱼ₊ₘ − ȳⱼ)² / (2(n − 2m + 1)), ȳⱼ the mean of the m values from j on, over every j from 0 to n − 2m.
 * White noise of deviation s gives s/√m; a flicker floor does not fall with m; drift rises with it.
 * Null unless the factor is a whole number above 0, n ≥ 2m, and all values are finite. Cost: a few passes, whatever the factor.
 * Source: NIST SP 1065 (Riley), 5.2.2, overlapping Allan variance; its test suites are in tests/reference.
 */
export function overlappingAllanDeviation(values: ArrayLike<number>, factor: number): number | null {
  const n = values.length;
  if (!Number.isInteger(factor) || factor < 1 || n < 2 * factor) return null;
  const middle = mean(values);
  if (!Number.isFinite(middle)) return null;
  // Running totals of what differs from the mean ("phase"): large values with small noise keep their digits.
  const totals = new Float64Array(n + 1);
  for (let i = 0; i < n; i += 1) totals[i + 1] = (totals[i] ?? NaN) + ((values[i] ?? NaN) - middle);
  const terms = n - 2 * factor + 1;
  let squares = 0;
  for (let j = 0; j < terms; j += 1) {
    const difference = (totals[j + 2 * factor] ?? NaN) - 2 * (totals[j + factor] ?? NaN) + (totals[j] ?? NaN);
    squares += difference * difference;
  }
  return Math.sqrt(squares / (2 * terms)) / factor;
}
