/**
 * Running median of five samples: each value is replaced by the median of itself and two neighbours on each side.
 * Near an end the window shrinks evenly: of three for the second value, the value itself at the end.
 * Takes out a single or double spike without moving an edge or a steady slope. Same length as `values`; same unit.
 */
export function runningMedianOf5(values: ArrayLike<number>): Float64Array {
  const n = values.length;
  const out = new Float64Array(n);
  const at = (i: number): number => values[i] ?? NaN;
  for (let i = 0; i < n; i += 1) {
    const arm = Math.min(2, i, n - 1 - i);
    if (arm === 2) out[i] = medianOf5(at(i - 2), at(i - 1), at(i), at(i + 1), at(i + 2));
    else if (arm === 1) out[i] = medianOf3(at(i - 1), at(i), at(i + 1));
    else out[i] = at(i);
  }
  return out;
}

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
