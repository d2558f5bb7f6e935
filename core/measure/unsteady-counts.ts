/** Stretches of an axis where the reading is unsteadier than elsewhere: a worn track, or a wiper that lifts. */
import { median } from '../numeric/quantile.ts';
import type { CleanSeries } from './axis-series.ts';
import { CountSquares } from './count-squares.ts';
import { evenInterval } from './even-timing.ts';
import { secondAt } from './step-noise.ts';
import type { AxisTravel } from './travel-measure.ts';

/** Readings in a window; of white noise the window's variance has some 12 degrees of freedom. */
const WINDOW = 24;
/** Such noise exceeds this many times its variance in one window of ten million (χ² with 12.4 degrees). */
const TIMES_VARIANCE = 5;
/** A single reading counts for no more than this many variances, so that one false reading is no stretch. */
const MOST = 64;
/** A window that spans more of the travel is no place, and with less of the travel in windows nothing is said. */
const WIDEST_SHARE = 0.02;
const LEAST_SHARE = 0.8;
/** An interval this many times the usual one hides a reading: what the stick went meanwhile is no unsteadiness. */
const LONG = 1.6;
/** Between what a steady and an unsteady reading have, in variances: where a stretch begins and ends. */
const DIVIDE = 2.5;

type Unsteady = AxisTravel['unsteady'];

/**
 * White noise has E(2u_i − u_{i−1} − u_{i+1})² = 6σ², whatever steady motion it sits on. The axis' own variance is the
 * median of that over windows of 24 readings in order of their counts, at least q²/12 of the step. A stretch is where the
 * windows reach five times that; `times` is √(variance there / own variance). Readings near fast motion are left out, a
 * jump counts as eight σ. Null where readings are too sparse or too unevenly timed. Counts as reported.
 */
export function unsteadyCounts(series: readonly CleanSeries[], min: number, max: number, step: number): Unsteady {
  const usual = evenInterval(series);
  const squares = CountSquares.over(min, max);
  if (usual === null || squares === null) return null;
  const each = (take: (count: number, square: number) => void): void => {
    for (const { t, slow, middle, clean } of series)
      for (let i = 1; i + 1 < t.length; i += 1) {
        const longest = Math.max((t[i + 1] ?? 0) - (t[i] ?? 0), (t[i] ?? 0) - (t[i - 1] ?? 0));
        if (slow[i] === 1 && longest <= LONG * usual) take(middle[i] ?? Number.NaN, secondAt(clean, i) ** 2 / 6);
      }
  };
  each((count, square) => squares.add(count, square));
  const windows = squares.windows(WINDOW, Math.max(2, WIDEST_SHARE * (max - min)));
  if (windows.coveredShare < LEAST_SHARE) return null;
  const own = Math.max(median(windows.means), step ** 2 / 12);
  const capped = CountSquares.over(min, max) ?? squares;
  each((count, square) => capped.add(count, Math.min(square, MOST * own)));
  for (const { middle, jumps } of series) for (const i of jumps) capped.add(middle[i] ?? Number.NaN, MOST * own);
  return capped
    .stretchesAbove(WINDOW, TIMES_VARIANCE * own, DIVIDE * own)
    .map(({ from, to, mean }) => ({ from, to, times: Math.sqrt(mean / own) }));
}
