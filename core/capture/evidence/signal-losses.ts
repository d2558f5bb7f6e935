/** Finds where the signal of a stick leaves it: readings that no hand and no spring can bring about. */
import { median, quantile } from '../../numeric/quantile.ts';
import type { AxisField, Pair } from '../../pad/stick.ts';
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
const SINGLE_US = 5_000;
const LEAST_SINGLE = 0.06;
const SINGLE_NOISES = 12;
/** Longer losses begin and end with a leap that no spring makes (see `leapBeyond`), and end in this time. */
const LONGEST_US = 700_000;
/** Between reports farther apart than this many usual intervals nothing is known. */
const LONG = 2.5;
/** Long ones begin while the stick is out: at least this share of the half travel from where it mostly is. */
const OUT = 0.15;
/** How far a stick goes meanwhile: half travels, and half travels a second. */
const STAYS = 0.1;
const GOES = 4;
/** Of the half range; a short range in the `reported` domain is no shorter. */
const LEAST_TRAVEL = 0.3;
/** Half travels between two losses at one place. */
const TWIN = 0.3;
const ENOUGH = 4000;
const LEAST_READINGS = 50;

/**
 * In order of time. A leap is a step from one reading to the next; what it leaps to is the stick's own if it does not leap back to
 * where the stick may be by then. A damped spring of ω = 100/s that lets go from full tilt moves by at most ω/e, 3.7 % of the half travel a
 * millisecond (common practice: small sticks return at some 16 Hz); what is well beyond on both ends is no motion. Noise and
 * scale are taken from the readings themselves; reports that came in a burst count as evenly spread. A loss of more than 60 ms counts
 * where another one begins or ends at the same place. Empty where there are too few.
 */
export function findSignalLosses(readings: StickTrack): SignalLoss[] {
  const { t, x, y } = readings;
  if (t.length < LEAST_READINGS) return [];
  const half = { x: halfTravel(x, readings.fields.x), y: halfTravel(y, readings.fields.y) };
  const usual = median(intervalsOf(t));
  const noise = Math.max(noiseOf(x) / half.x, noiseOf(y) / half.y);
  const apart = (i: number, k: number): number =>
    Math.max(Math.abs((x[i] ?? 0) - (x[k] ?? 0)) / half.x, Math.abs((y[i] ?? 0) - (y[k] ?? 0)) / half.y);
  const place = (i: number): Pair => ({ x: x[i] ?? Number.NaN, y: y[i] ?? Number.NaN });
  const time = (i: number): number => t[i] ?? Number.NaN;
  const leastSingle = Math.max(LEAST_SINGLE, SINGLE_NOISES * noise);
  const leastShort = Math.max(LEAST_SHORT, SINGLE_NOISES * noise);

  const middle = { x: median(thinned(x)), y: median(thinned(y)) };
  const isOut = (i: number): boolean =>
    Math.hypot(((x[i] ?? 0) - middle.x) / half.x, ((y[i] ?? 0) - middle.y) / half.y) >= OUT;

  const endOf = (i: number): number | null => {
    const step = apart(i, i - 1);
    const isFast = isOut(i - 1) && step > leapBeyond(Math.max(usual, time(i) - time(i - 1)));
    for (let j = i + 1; j < t.length; j += 1) {
      const elapsed = time(j) - time(i - 1);
      if (elapsed > (isFast ? LONGEST_US : SHORT_US)) return null;
      if (time(j) - time(j - 1) > LONG * usual) return null;
      const back = apart(j, j - 1);
      const off = apart(j, i - 1);
      if (j === i + 1 && elapsed <= 2 * SINGLE_US && back >= leastSingle && off <= step / 3) return j;
      if (back < leastShort || step < leastShort) continue;
      if (off > Math.min(STAYS + (GOES * elapsed) / 1e6, (elapsed <= SHORT_US ? 0.5 : 10) * step)) continue;
      if (elapsed <= SHORT_US || back > leapBeyond(Math.max(usual, time(j) - time(j - 1)))) return j;
    }
    return null;
  };

  const losses: SignalLoss[] = [];
  for (let i = 1; i < t.length; i += 1) {
    if (!(apart(i, i - 1) >= leastSingle && time(i) - time(i - 1) <= LONG * usual)) continue;
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
  return losses.filter(
    (loss) => loss.endUs - loss.startUs <= SHORT_US || losses.some((other) => isTwin(loss, other, half)),
  );
}

/** A long loss may be a hand that was not watched for a moment; two that begin or end at one place are the stick's. */
function isTwin(loss: SignalLoss, other: SignalLoss, half: Pair): boolean {
  if (other === loss || other.endUs - other.startUs <= SHORT_US) return false;
  // Of two that follow on each other one's end is the other's beginning.
  if (Math.min(Math.abs(other.from - loss.to), Math.abs(loss.from - other.to)) <= 2) return false;
  return [other.before, other.after].some(
    (place) =>
      Math.hypot((place.x - loss.before.x) / half.x, (place.y - loss.before.y) / half.y) <= TWIN ||
      Math.hypot((place.x - loss.after.x) / half.x, (place.y - loss.after.y) / half.y) <= TWIN,
  );
}

/** Half travels that a spring brings a stick by in an interval, at most, at its greatest speed ω/e; 1.6 times that is a leap. */
function leapBeyond(intervalUs: number): number {
  return Math.max(LEAST_SHORT, (1.6 * intervalUs) / 10_000 / Math.E);
}

/** Of a stick that hardly moved, a part of the half range. */
function halfTravel(counts: Float64Array, { minimum, maximum }: AxisField): number {
  const some = thinned(counts);
  const seen = (quantile(some, 0.995) - quantile(some, 0.005)) / 2;
  return Math.max(seen, (LEAST_TRAVEL * (maximum - minimum)) / 2);
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
