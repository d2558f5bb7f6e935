/** First index of a column of times, never decreasing, whose time is `t` or later; its length where there is none. */
export function indexAt(times: Float64Array, t: number): number {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((times[middle] ?? Number.POSITIVE_INFINITY) < t) low = middle + 1;
    else high = middle;
  }
  return low;
}
