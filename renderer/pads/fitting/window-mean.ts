/** The mean of the newest stretch of readings and the noise in it: what a person can read while readings stream. */
import type { ReadingRing } from '../reading-ring.ts';

export const MEAN_WINDOW_US = 100_000;
/** Fewer readings than this say nothing about noise. */
const NOISE_READINGS = 20;

export interface WindowMean {
  /** Time-weighted mean in raw counts: each reading counts until the next one, so a pad that reports only changes is averaged rightly. */
  readonly mean: number;
  /** Sample σ of the readings in counts; null with fewer than 20 in the window. */
  readonly sigma: number | null;
  /** Greatest less least count in the window. */
  readonly peakToPeak: number;
  readonly readings: number;
}

/** Over the 100 ms before `nowMicros` (bench clock). Null while there is no reading at all. */
export function windowMean(ring: ReadingRing, column: number, nowMicros: number): WindowMean | null {
  if (ring.taken === 0) return null;
  const until = Math.max(nowMicros, ring.newestTime);
  const since = until - MEAN_WINDOW_US;
  const first = ring.firstSince(since);
  const carried = Math.max(ring.oldest, first - 1);
  let weighted = 0;
  let weight = 0;
  let sum = 0;
  let squares = 0;
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  const about = ring.newest(column);
  for (let reading = carried; reading < ring.taken; reading += 1) {
    const value = ring.valueOf(reading, column);
    const from = Math.max(since, ring.timeOf(reading));
    const to = reading + 1 < ring.taken ? ring.timeOf(reading + 1) : until;
    const span = Math.max(0, to - from);
    weighted += (value - about) * span;
    weight += span;
    // The reading before the window holds into it and weighs in the mean, but it is no reading of the window.
    if (reading < first) continue;
    sum += value - about;
    squares += (value - about) ** 2;
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
  }
  const readings = ring.taken - first;
  const sigma = readings < NOISE_READINGS ? null : Math.sqrt((squares - sum ** 2 / readings) / (readings - 1));
  return {
    mean: weight > 0 ? about + weighted / weight : about,
    sigma,
    peakToPeak: readings === 0 ? 0 : greatest - least,
    readings,
  };
}
