/** The readings of an axis that are on their way: where a stick stands, visits of a count say nothing of its neighbours. */
import type { AxisSeries } from './axis-series.ts';

/** Half of the time over which a motion is looked for. */
const ARM_US = 50_000;

/** Raw counts of readings about which the running median moves by at least `least` counts in 100 ms. */
export function movingReadings({ t, u, middle }: AxisSeries, least: number): Float64Array {
  let [before, after] = [0, 0];
  return u.filter((_, i) => {
    const at = t[i] ?? Number.NaN;
    while ((t[before] ?? Number.NaN) < at - ARM_US) before += 1;
    while (after + 1 < t.length && (t[after + 1] ?? Number.NaN) <= at + ARM_US) after += 1;
    return Math.abs((middle[after] ?? Number.NaN) - (middle[before] ?? Number.NaN)) >= least;
  });
}
