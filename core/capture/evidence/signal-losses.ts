/** Finds where the signal of a stick leaves it: readings that no hand and no spring can bring about. */
import { median, quantile } from '../../numeric/quantile.ts';
import type { Pair } from '../../pad/stick.ts';
import type { StickTrack } from './track.ts';

export interface SignalLoss {
  /** Indices of the readings that are not the stick's, end exclusive. */
  readonly from: number;
  readonly to: number;
  readonly startUs: number;
  readonly endUs: number;
  /** The last reading before and the first one after, raw counts. */
  readonly before: Pair;
  readonly after: Pair;
  /** How far it left, in half travels. */
  readonly size: number;
}

/** A leap out and back within this time may be small: in so short a time no thumb turns round. */
const SHORT_US = 60_000;
const LEAST_SHORT = 0.2;
/** So does a single reading, where reports come at least this often. */
const SINGLE_US = 10_000;
const LEAST_SINGLE = 0.06;
const SINGLE_NOISES = 12;
/** Longer losses begin and end with a leap that no spring makes (see `leapBeyond`), and end in this time. */
const LONGEST_US = 2_500_000;
/** Between reports farther apart than this many usual intervals nothing is known. */
const LONG = 2.5;
/** How far a stick goes meanwhile: half travels, and half travels a second. */
const STAYS = 0.1;
const GOES = 4;
const ENOUGH = 4000;
const LEAST_READINGS = 50;

/**
 * In order of time. A leap is a step from one reading to the next; what it leaps to is the stick's own if it does not leap back to
 * where the stick may be by then. A spring that lets go from full tilt at ω = 100/s moves by at most 1 − cos ωt of the half travel and 10 % of
 * it a millisecond (common practice: small sticks return at some 16 Hz); what is faster on both ends is no motion. Noise and
 * scale are taken from the readings themselves. Empty where there are too few.
 */
export function findSignalLosses(readings: StickTrack): SignalLoss[] {
  const { t, x, y } = readings;
  if (t.length < LEAST_READINGS) return [];
  const half = { x: halfTravel(x), y: halfTravel(y) };
  if (half.x <= 0 || half.y <= 0) return [];
  const usual = median(intervalsOf(t));
  const noise = Math.max(noiseOf(x) / half.x, noiseOf(y) / half.y);
  const apart = (i: number, k: number): number =>
    Math.max(Math.abs((x[i] ?? 0) - (x[k] ?? 0)) / half.x, Math.abs((y[i] ?? 0) - (y[k] ?? 0)) / half.y);
  const place = (i: number): Pair => ({ x: x[i] ?? Number.NaN, y: y[i] ?? Number.NaN });
  const time = (i: number): number => t[i] ?? Number.NaN;
  const leastSingle = Math.max(LEAST_SINGLE, SINGLE_NOISES * noise);
  const leastShort = Math.max(LEAST_SHORT, SINGLE_NOISES * noise);

  const endOf = (i: number): number | null => {
    const step = apart(i, i - 1);
    const interval = time(i) - time(i - 1);
    const isFast = step > leapBeyond(interval);
    for (let j = i + 1; j < t.length; j += 1) {
      const elapsed = time(j) - time(i - 1);
      if (elapsed > (isFast ? LONGEST_US : SHORT_US)) return null;
      if (time(j) - time(j - 1) > LONG * usual) return null;
      const back = apart(j, j - 1);
      const off = apart(j, i - 1);
      if (j === i + 1 && elapsed <= 2 * SINGLE_US && back >= leastSingle && off <= step / 3) return j;
      if (back < leastShort || step < leastShort) continue;
      if (off > Math.min(STAYS + (GOES * elapsed) / 1e6, (elapsed <= SHORT_US ? 0.5 : 10) * step)) continue;
      if (elapsed <= SHORT_US || back > leapBeyond(time(j) - time(j - 1))) return j;
    }
    return null;
  };

  const losses: SignalLoss[] = [];
  for (let i = 1; i < t.length; i += 1) {
    if (apart(i, i - 1) < leastSingle || time(i) - time(i - 1) > LONG * usual) continue;
    const end = endOf(i);
    if (end === null) continue;
    let size = 0;
    for (let k = i; k < end; k += 1) size = Math.max(size, apart(k, i - 1));
    losses.push({
      from: i,
      to: end,
      startUs: time(i),
      endUs: time(end),
      before: place(i - 1),
      after: place(end),
      size,
    });
    i = end;
  }
  return losses;
}

/** What a spring brings a stick by in an interval, at most, in half travels: 1 − cos ωt, then 10 % a millisecond; twice that is a leap. */
function leapBeyond(intervalUs: number): number {
  const turned = intervalUs / 10_000;
  const moved = turned < 1 ? 1 - Math.cos(turned) : Math.min(2, 0.46 + 0.84 * (turned - 1));
  return Math.max(LEAST_SHORT, 2 * moved);
}

function halfTravel(counts: Float64Array): number {
  const some = thinned(counts);
  return (quantile(some, 0.995) - quantile(some, 0.005)) / 2;
}

/** σ of a reading from the median step between neighbours. */
function noiseOf(counts: Float64Array): number {
  const stride = Math.max(1, Math.floor(counts.length / ENOUGH));
  const steps: number[] = [];
  for (let i = stride; i < counts.length; i += stride) steps.push(Math.abs((counts[i] ?? 0) - (counts[i - 1] ?? 0)));
  return median(steps);
}

function intervalsOf(t: Float64Array): number[] {
  const stride = Math.max(1, Math.floor(t.length / ENOUGH));
  const intervals: number[] = [];
  for (let i = stride; i < t.length; i += stride) intervals.push((t[i] ?? 0) - (t[i - 1] ?? 0));
  return intervals;
}

function thinned(counts: Float64Array): Float64Array {
  const stride = Math.max(1, Math.floor(counts.length / ENOUGH));
  return counts.filter((_, i) => i % stride === 0);
}
