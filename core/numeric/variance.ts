import { mean } from './mean.ts';

/**
 * Sample variance s² = Σ(x − x̄)²/(n − 1), in the squared unit of the values.
 * Two passes with the correction of Chan, Golub and LeVeque (The American Statistician 37 (1983) 242, from memory), which takes out
 * what the rounding of the mean adds. NaN with fewer than two values.
 */
export function variance(values: ArrayLike<number>): number {
  const n = values.length;
  if (n < 2) return NaN;
  const centre = mean(values);
  let squares = 0;
  let residuals = 0;
  for (let i = 0; i < n; i += 1) {
    const d = (values[i] ?? NaN) - centre;
    squares += d * d;
    residuals += d;
  }
  return (squares - (residuals * residuals) / n) / (n - 1);
}

/** Sample standard deviation s = √s², in the unit of the values. NaN with fewer than two values. */
export function standardDeviation(values: ArrayLike<number>): number {
  return Math.sqrt(variance(values));
}
