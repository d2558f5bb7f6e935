/** The noise of readings that move, from one to the next. */

/** Of normal noise the median of |d| is σ/1.4826. */
const NORMAL = 1.4826;
/** More differences than these tell no more of a median. */
const ENOUGH = 20_000;

/**
 * σ in counts of white noise on a smooth motion, robust: 1.4826 · median |2u_i − u_{i−1} − u_{i+1}| / √6, each series for
 * itself. Steady motion falls out of the second difference. The median is that of grouped values, since whole steps know
 * few sizes; where noise is below the step at least 0.15 steps come out. Of a long log every k-th difference is taken. 0
 * with fewer than three readings. Source: median of grouped data, e.g. any text on descriptive statistics, from memory.
 */
export function stepNoise(series: readonly Float64Array[], step: number): number {
  const total = series.reduce((sum, u) => sum + Math.max(0, u.length - 2), 0);
  const stride = Math.ceil(total / ENOUGH);
  const seconds = new Float64Array(total === 0 ? 0 : Math.ceil(total / stride));
  let number = 0;
  for (const u of series)
    for (let i = 1; i + 1 < u.length; i += 1) {
      if (number % stride === 0) seconds[number / stride] = Math.abs(secondAt(u, i));
      number += 1;
    }
  return (NORMAL * groupedMedian(seconds.sort(), step)) / Math.sqrt(6);
}

/** 2u_i − u_{i−1} − u_{i+1}: the mean square of white noise is 6σ². */
export function secondAt(u: Float64Array, i: number): number {
  return 2 * (u[i] ?? Number.NaN) - (u[i - 1] ?? Number.NaN) - (u[i + 1] ?? Number.NaN);
}

/** Of sizes that stand for half a step to either side, sorted; what is 0 stands for less than half a step. */
function groupedMedian(sorted: Float64Array, step: number): number {
  const n = sorted.length;
  const middle = sorted[n >> 1];
  if (middle === undefined) return 0;
  const first = sorted.indexOf(middle);
  const share = (n / 2 - first) / (sorted.lastIndexOf(middle) + 1 - first);
  return middle === 0 ? (step / 2) * share : middle + step * (share - 0.5);
}
