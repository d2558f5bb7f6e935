/** Computes what a dwell says of the rest. */
import type { Pair, StickFields } from '../../pad/stick.ts';
import type { Dwell } from './evidence.ts';
import { indexAt } from './find-index.ts';
import type { StillSpan } from './still-spans.ts';
import type { StickTrack } from './track.ts';

/** With fewer reports the noise cannot be stated. */
const LEAST_REPORTS = 20;
/** How long before a dwell the stick may have come back: settling takes less, a button held down may take more. */
const RETURN_US = 4_000_000;
/** How long before it came back its farthest tilt is looked for. */
const TILT_US = 1_000_000;
/** A tilt below this share of the half range is no direction to come from. */
export const TILT_SHARE = 0.15;

/**
 * Readings from the start, the one held there included, to before the end, weighed by the time each was held.
 * Variance: Σw(u − ū)²/Σw · n/(n − 1), which for evenly spaced reports is the sample variance.
 */
export function describeDwell(track: StickTrack, span: StillSpan): Dwell {
  const { t, x, y } = track;
  const { startUs, endUs } = span;
  const first = indexAt(t, startUs);
  const end = indexAt(t, endUs);
  const held = (t[first] ?? Number.POSITIVE_INFINITY) > startUs && first > 0 ? first - 1 : first;
  const weigh = (i: number): number => (i + 1 < end ? (t[i + 1] ?? endUs) : endUs) - Math.max(startUs, t[i] ?? startUs);
  const mean = meanOf(track, held, end, weigh);
  const readings = new Map<string, Pair>();
  const least = { x: Number.POSITIVE_INFINITY, y: Number.POSITIVE_INFINITY };
  const greatest = { x: Number.NEGATIVE_INFINITY, y: Number.NEGATIVE_INFINITY };
  let weights = 0;
  const squares = { x: 0, y: 0 };
  for (let i = held; i < end; i += 1) {
    const u = { x: x[i] ?? Number.NaN, y: y[i] ?? Number.NaN };
    const weight = weigh(i);
    weights += weight;
    squares.x += weight * (u.x - mean.x) ** 2;
    squares.y += weight * (u.y - mean.y) ** 2;
    least.x = Math.min(least.x, u.x);
    least.y = Math.min(least.y, u.y);
    greatest.x = Math.max(greatest.x, u.x);
    greatest.y = Math.max(greatest.y, u.y);
    readings.set(`${u.x} ${u.y}`, u);
  }
  const reports = end - first;
  const factor = reports / (reports - 1) / weights;
  return {
    startUs,
    endUs,
    point: mean,
    reports,
    variance: reports < LEAST_REPORTS ? null : { x: squares.x * factor, y: squares.y * factor },
    least,
    greatest,
    from: findTilt(track, mean, startUs),
    readings: [...readings.values()].flatMap((u) => [u.x, u.y]),
  };
}

/** Weighed from the first reading, so that counts of any size lose nothing. */
function meanOf(track: StickTrack, from: number, end: number, weigh: (i: number) => number): Pair {
  const first = { x: track.x[from] ?? Number.NaN, y: track.y[from] ?? Number.NaN };
  let weights = 0;
  let xSum = 0;
  let ySum = 0;
  for (let i = from; i < end; i += 1) {
    const weight = weigh(i);
    weights += weight;
    xSum += weight * ((track.x[i] ?? Number.NaN) - first.x);
    ySum += weight * ((track.y[i] ?? Number.NaN) - first.y);
  }
  return weights === 0 ? first : { x: first.x + xSum / weights, y: first.y + ySum / weights };
}

/** Unit vector, y up, from a rest to the farthest reading of the last tilt before it; null where there was none. */
function findTilt(track: StickTrack, rest: Pair, startUs: number): Pair | null {
  const { t, x, y, fields } = track;
  const awayAt = (i: number): Pair => ({
    x: fields.x.up * ((x[i] ?? Number.NaN) - rest.x),
    y: fields.y.up * ((y[i] ?? Number.NaN) - rest.y),
  });
  const first = Math.max(0, indexAt(t, startUs - RETURN_US) - 1);
  let last = indexAt(t, startUs) - 1;
  while (last >= first && tiltOf(fields, awayAt(last)) < TILT_SHARE) last -= 1;
  if (last < first) return null;
  let far = awayAt(last);
  for (let i = last; i >= 0 && (t[i] ?? 0) >= (t[last] ?? 0) - TILT_US; i -= 1) {
    const away = awayAt(i);
    if (Math.hypot(away.x, away.y) > Math.hypot(far.x, far.y)) far = away;
  }
  const size = Math.hypot(far.x, far.y);
  return { x: far.x / size, y: far.y / size };
}

/** A difference of counts as a share of the half range of the fields: 1 is from the middle to a limit of an axis. */
export function tiltOf(fields: StickFields, d: Pair): number {
  const half = (field: StickFields['x']): number => (field.maximum - field.minimum) / 2;
  return Math.hypot(d.x / half(fields.x), d.y / half(fields.y));
}
