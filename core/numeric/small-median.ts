/** Medians of a few samples without sorting: for running medians of long columns. */

/** The one in the middle of three. */
export function medianOf3(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}

/** The one in the middle of five: the least and the greatest of the first four drop out. */
export function medianOf5(a: number, b: number, c: number, d: number, e: number): number {
  const low = Math.max(Math.min(a, b), Math.min(c, d));
  const high = Math.min(Math.max(a, b), Math.max(c, d));
  return medianOf3(low, high, e);
}
