/** Which readings of a stick move slowly and straight on, so that what is left of them is noise. */
import type { StickTrack } from '../capture/evidence/track.ts';
import type { Stretch } from '../capture/evidence/unbroken-stretches.ts';
import { runningMedian } from './axis-series.ts';

/** Faster than so many half ranges a second the stick is pushed or springs back, and so near to it in time it still does. */
const FASTEST = 6;
const NEAR_US = 100_000;

/** A corner turns the way by this much within so short a time, radians, where the stick goes so far on both sides of it, half ranges. */
const CORNER = 0.35;
const CORNER_US = 20_000;
const CORNER_READINGS = 5;
const CORNER_WAY = 0.015;

/** 1 for each reading of a stretch that is not within 100 ms of faster motion on either axis, nor at a corner of its way. */
export function slowReadings(track: StickTrack, { from, to }: Stretch): Uint8Array {
  const t = track.t.subarray(from, to);
  const slow = new Uint8Array(t.length).fill(1);
  const at = (i: number): number => t[i] ?? Number.NaN;
  for (const axis of ['x', 'y'] as const) {
    const { minimum, maximum } = track.fields[axis];
    const fastest = (FASTEST * (maximum - minimum)) / 2e6;
    const middle = runningMedian(track[axis].subarray(from, to));
    let cleared = 0;
    let fastUs = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < t.length; i += 1) {
      const before = Math.max(0, i - 1);
      const after = Math.min(t.length - 1, i + 1);
      const moved = Math.abs((middle[after] ?? Number.NaN) - (middle[before] ?? Number.NaN));
      if (moved > fastest * (at(after) - at(before))) {
        fastUs = at(i);
        for (let back = i; back >= cleared && at(i) - at(back) <= NEAR_US; back -= 1) slow[back] = 0;
        cleared = i;
      } else if (at(i) - fastUs <= NEAR_US) slow[i] = 0;
    }
  }
  clearCorners(track, from, to, slow);
  return slow;
}

/**
 * Where the way of the stick breaks, at a corner of its gate, the step from reading to reading changes as a spike would make it. Taken
 * over 20 ms to either side, at least five readings, so that noise does not turn the way.
 */
function clearCorners(track: StickTrack, from: number, to: number, slow: Uint8Array): void {
  const t = track.t.subarray(from, to);
  const [x, y] = (['x', 'y'] as const).map((axis) => {
    const { minimum, maximum } = track.fields[axis];
    return runningMedian(track[axis].subarray(from, to)).map((count) => (2 * count) / (maximum - minimum));
  }) as [Float64Array, Float64Array];
  const at = (values: Float64Array, i: number): number => values[i] ?? Number.NaN;
  let [before, after] = [0, 0];
  let cleared = 0;
  for (let i = 0; i < t.length; i += 1) {
    while (at(t, before + 1) <= at(t, i) - CORNER_US) before += 1;
    while (after + 1 < t.length && at(t, after) < at(t, i) + CORNER_US) after += 1;
    const first = Math.max(0, Math.min(before, i - CORNER_READINGS));
    const last = Math.min(t.length - 1, Math.max(after, i + CORNER_READINGS));
    const [ax, ay] = [at(x, i) - at(x, first), at(y, i) - at(y, first)];
    const [bx, by] = [at(x, last) - at(x, i), at(y, last) - at(y, i)];
    if (Math.min(Math.hypot(ax, ay), Math.hypot(bx, by)) < CORNER_WAY) continue;
    if (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) < CORNER) continue;
    slow.fill(0, Math.max(cleared, first), last + 1);
    cleared = last + 1;
  }
}
