import { leastFirst, numbersFirst, selectAt } from './select.ts';

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

/**
 * The same at several fractions, in ascending order, of values in any order, which this reorders: hand over a copy. Only the
 * order statistics asked for are found, by selection.
 */
export function takeQuantiles(values: Float64Array, fractions: readonly number[]): number[] {
  const numbers = numbersFirst(values);
  let settled = 0;
  return fractions.map((p) => {
    if (!(p >= 0 && p <= 1)) return NaN;
    const position = (values.length - 1) * p;
    const below = Math.floor(position);
    if (below >= settled && below < numbers) {
      selectAt(values, below, settled, numbers - 1);
      settled = below + 1;
    }
    if (position > below && below + 1 >= settled && below + 1 < numbers) {
      leastFirst(values, below + 1, numbers - 1);
      settled = below + 2;
    }
    return quantileSorted(values, p);
  });
}

/** The same of values in any order, which stay as they are. */
export function quantile(values: ArrayLike<number>, p: number): number {
  return takeQuantiles(Float64Array.from(values), [p])[0] ?? NaN;
}

/** Middle value; the mean of the two middle ones where their number is even. NaN without values. */
export function median(values: ArrayLike<number>): number {
  return quantile(values, 0.5);
}
