/** How wide the middle is that a pad answers with one count. */
import { findTravelSpans } from '../capture/evidence/travel-spans.ts';
import type { StickTrack, Track } from '../capture/evidence/track.ts';
import { median, quantile } from '../numeric/quantile.ts';
import type { Pair, StickId } from '../pad/stick.ts';

export interface MiddleBand {
  readonly axis: 'x' | 'y';
  /** Half the width, a share of the half travel. */
  readonly width: number;
  readonly u95: number;
}

/** With fewer passes through the middle nothing is said. */
const LEAST_PASSES = 4;
/** A pass is timed between these shares of the half travel on either side of the middle, and the pace within taken as even. */
const OUTER = 0.35;
/** Farther aside a sweep passes beside the middle, where a round zone takes nothing. */
const ASIDE = 0.12;
const SLOWEST_US = 4_000_000;

/**
 * In each passage of an axis from one side to the other, at an even pace, the time that the reading stands on its middle count is to
 * the whole time as the width of the middle is to that of the passage: width = standing/whole · 2·0.35 of the half travel, less one
 * count. Median over the passages; U from the quartiles, 1.96·1.2533·σ/√n. The wider of the two axes. `rest` in raw counts, `half` in counts. Null with fewer than
 * four passages.
 */
export function middleBand(track: Track, stick: StickId, rest: Pair, half: Pair): MiddleBand | null {
  const readings = track.sticks[stick];
  const spans = readings === undefined ? null : findTravelSpans(track, stick, rest, true);
  if (readings === undefined || spans === null || spans.from !== 'travel') return null;
  const bands = (['x', 'y'] as const).flatMap((axis) => {
    const stretches = spans[axis].map(({ from, to }) => passagesIn(readings, axis, from, to, rest, half));
    const widths = stretches.flat();
    if (widths.length < LEAST_PASSES) return [];
    const sigma = (quantile(widths, 0.75) - quantile(widths, 0.25)) / 1.349;
    const width = Math.max(0, median(widths) / 2);
    const u95 = Math.hypot((1.96 * 1.2533 * sigma) / 2 / Math.sqrt(widths.length), 0.5 / half[axis]);
    return [{ axis, width, u95 }];
  });
  return bands.toSorted((a, b) => b.width - b.u95 - (a.width - a.u95))[0] ?? null;
}

/** Widths of the middle as each passage within some readings tells them, shares of the half travel. */
function passagesIn(
  { t, x, y }: StickTrack,
  axis: 'x' | 'y',
  from: number,
  to: number,
  rest: Pair,
  half: Pair,
): number[] {
  const [along, across] = axis === 'x' ? [x, y] : [y, x];
  const other = axis === 'x' ? 'y' : 'x';
  const place = (i: number): number => ((along[i] ?? Number.NaN) - rest[axis]) / half[axis];
  const widths: number[] = [];
  let start: number | null = null;
  for (let i = from + 1; i < to; i += 1) {
    const [before, now] = [place(i - 1), place(i)];
    if (Math.abs(before) >= OUTER && Math.abs(now) < OUTER) start = i;
    if (start === null || Math.abs(now) < OUTER) continue;
    const began = place(start - 1);
    const isThrough = Math.sign(began) !== Math.sign(now);
    const whole = (t[i] ?? 0) - (t[start] ?? 0);
    const isAside = across
      .subarray(start, i)
      .some(
        (count, k) =>
          Math.abs(place(k + (start ?? 0))) < OUTER / 2 && Math.abs((count - rest[other]) / half[other]) > ASIDE,
      );
    if (isThrough && whole > 0 && whole <= SLOWEST_US && !isAside)
      widths.push((standing(t, along, start, i, rest[axis]) / whole) * 2 * OUTER - 1 / half[axis]);
    start = null;
  }
  return widths;
}

/** Longest time that the reading stands on one count near the rest, microseconds. */
function standing(t: Float64Array, counts: Float64Array, from: number, to: number, rest: number): number {
  let longest = 0;
  let since = from;
  for (let i = from + 1; i <= to; i += 1) {
    if (counts[i] === counts[since] && i < to) continue;
    if (Math.abs((counts[since] ?? 0) - rest) <= 2) longest = Math.max(longest, (t[i] ?? 0) - (t[since] ?? 0));
    since = i;
  }
  return longest;
}
