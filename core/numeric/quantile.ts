/**
 * Quantile of values sorted in ascending order, definition 7 of Hyndman and Fan (The American Statistician 50 (1996) 361):
 * linear between the order statistics around position (n − 1)p, counted from 0. `p` is a fraction in [0, 1].
 * NaN without values, or with p outside [0, 1].
 */
export function quantileSorted(sorted: ArrayLike<number>, p: number): number {
  const n = sorted.length;
  if (n === 0 || !(p >= 0 && p <= 1)) return NaN;
  const position = (n - 1) * p;
  const below = Math.floor(position);
  const low = sorted[below] ?? NaN;
  const share = position - below;
  if (share === 0) return low;
  const high = sorted[below + 1] ?? NaN;
  return low + share * (high - low);
}

/** The same of values in any order, which stay as they are. */
export function quantile(values: ArrayLike<number>, p: number): number {
  return quantileSorted(Float64Array.from(values).sort(), p);
}

/** Middle value; the mean of the two middle ones where their number is even. NaN without values. */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5);
}
