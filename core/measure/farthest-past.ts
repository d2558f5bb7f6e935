/** How far a stick that was let go comes out on the other side of its rest. */
import type { StickTrack } from '../capture/evidence/track.ts';
import type { Pair } from '../pad/stick.ts';

/** Three readings within this time are near enough for their median: it cuts less than 2 % off a peak of 20 Hz. */
const NEAR_US = 5_000;

interface Past {
  /** Counts past the rest, along the line of the return; 0 where it never got past. */
  readonly overshoot: number;
  /** Where that is, raw counts: on the line of the return. */
  readonly far: Pair;
}

/**
 * Over readings `from` … `end`. Where they come densely, medians of three are taken, so that no single false reading is the
 * peak. The peak between two readings is not seen: it is higher by up to 1 − cos(π·f·Δ) of itself.
 */
export function farthestPast({ t, x, y }: StickTrack, rest: Pair, tilt: Pair, from: number, end: number): Past {
  const way = { x: tilt.x - rest.x, y: tilt.y - rest.y };
  const length = Math.hypot(way.x, way.y);
  const along = (i: number): number =>
    (((x[i] ?? Number.NaN) - rest.x) * way.x + ((y[i] ?? Number.NaN) - rest.y) * way.y) / length;
  let least = 0;
  for (let i = from + 1; i < end; i += 1) {
    const isDense = i + 1 < end && (t[i + 1] ?? 0) - (t[i - 1] ?? 0) <= NEAR_US;
    const [a, b, c] = [along(i - 1), along(i), along(i + 1)];
    least = Math.min(least, isDense ? Math.max(Math.min(a, b), Math.min(Math.max(a, b), c)) : b);
  }
  return { overshoot: -least + 0, far: { x: rest.x + (least * way.x) / length, y: rest.y + (least * way.y) / length } };
}
