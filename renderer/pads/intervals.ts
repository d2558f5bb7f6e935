/** How evenly readings arrive: quantiles and a histogram of the intervals of the newest stretch, as received here. */
import type { ReadingRing } from './reading-ring.ts';

const STRETCH_US = 2_000_000;
/** Bins are quarters of an octave from 0.125 ms to 128 ms; what is shorter or longer counts in the first or last. */
const FIRST_US = 125;
const BINS_AN_OCTAVE = 4;
export const INTERVAL_BINS = 10 * BINS_AN_OCTAVE;

export interface Intervals {
  readonly count: number;
  readonly medianUs: number;
  readonly p95Us: number;
  readonly longestUs: number;
  /** Share of the intervals in each bin. */
  readonly shares: readonly number[];
}

/** Place of an interval along the bins, 0 … INTERVAL_BINS. */
export function intervalPlace(micros: number): number {
  return Math.min(INTERVAL_BINS, Math.max(0, BINS_AN_OCTAVE * Math.log2(micros / FIRST_US)));
}

/** Over the two seconds before `nowMicros`. Null with fewer than two readings in them. Quantiles: the smallest interval that so many reach. */
export function recentIntervals(ring: ReadingRing, nowMicros: number): Intervals | null {
  const first = ring.firstSince(nowMicros - STRETCH_US);
  const count = ring.taken - first - 1;
  if (count < 1) return null;
  const sorted = new Float64Array(count);
  for (let index = 0; index < count; index += 1)
    sorted[index] = ring.timeOf(first + index + 1) - ring.timeOf(first + index);
  sorted.sort();
  const shares = Array.from({ length: INTERVAL_BINS }, () => 0);
  for (const micros of sorted) {
    const bin = Math.min(INTERVAL_BINS - 1, Math.floor(intervalPlace(micros)));
    shares[bin] = (shares[bin] ?? 0) + 1 / count;
  }
  const quantile = (share: number): number => sorted[Math.max(0, Math.ceil(share * count) - 1)] ?? Number.NaN;
  return { count, medianUs: quantile(0.5), p95Us: quantile(0.95), longestUs: quantile(1), shares };
}
