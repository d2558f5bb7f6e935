/** Whether reports come evenly enough to take what lies between them for noise. */
import { takeQuantiles } from '../numeric/quantile.ts';
import type { AxisSeries } from './axis-series.ts';

/** Evenly timed: the 95 % quantile of the intervals is at most this many times their median. */
const EVEN = 1.5;

/** The usual interval in microseconds; null where reports come unevenly, as on change or in bursts. */
export function evenInterval(series: readonly Pick<AxisSeries, 't'>[]): number | null {
  const intervals = new Float64Array(series.reduce((sum, { t }) => sum + Math.max(0, t.length - 1), 0));
  let number = 0;
  for (const { t } of series)
    for (let i = 1; i < t.length; i += 1) {
      intervals[number] = (t[i] ?? Number.NaN) - (t[i - 1] ?? Number.NaN);
      number += 1;
    }
  const [usual = Number.NaN, slow = Number.NaN] = takeQuantiles(intervals, [0.5, 0.95]);
  return usual > 0 && slow <= EVEN * usual ? usual : null;
}
