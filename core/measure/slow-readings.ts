/** Which readings of a stick move slowly and straight on, so that what is left of them is noise. */
import type { StickTrack } from '../capture/evidence/track.ts';
import type { Pair } from '../pad/stick.ts';
import type { Stretch } from '../capture/evidence/unbroken-stretches.ts';
import { runningMedian } from './axis-series.ts';

/** Faster than so many half ranges a second the stick is pushed or springs back, and so near to it in time it still does. */
const FASTEST = 6;
const NEAR_US = 100_000;

/** A corner turns the way by 0.35 radians within so short a time, where the stick goes so far on both sides of it, half ranges. */
const COS2_CORNER = Math.cos(0.35) ** 2;
const CORNER_US = 20_000;
const CORNER_READINGS = 5;
const CORNER_WAY = 0.015;

/** 1 for each reading of a stretch that is not within 100 ms of faster motion on either axis, nor at a corner of its way. */
export function slowReadings(track: StickTrack, { from, to }: Stretch): Uint8Array {
  const t = track.t.subarray(from, to);
  const slow = new Uint8Array(t.length).fill(1);
  const x = runningMedian(track.x.subarray(from, to));
  const y = runningMedian(track.y.subarray(from, to));
  const half = (axis: 'x' | 'y'): number => (track.fields[axis].maximum - track.fields[axis].minimum) / 2;
  clearFast(t, x, half('x'), slow);
  clearFast(t, y, half('y'), slow);
  clearCorners(t, x, y, { x: half('x'), y: half('y') }, slow);
  return slow;
}

function clearFast(t: Float64Array, middle: Float64Array, half: number, slow: Uint8Array): void {
  const at = (i: number): number => t[i] ?? Number.NaN;
  const fastest = (FASTEST * half) / 1e6;
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

/**
 * Where the way of the stick breaks, at a corner of its gate, the step from reading to reading changes as a spike would make it. Taken
 * over 20 ms to either side, at least five readings, so that noise does not turn the way.
 */
function clearCorners(t: Float64Array, x: Float64Array, y: Float64Array, half: Pair, slow: Uint8Array): void {
  let [before, after] = [0, 0];
  let cleared = 0;
  for (let i = 0; i < t.length; i += 1) {
    const now = t[i] ?? Number.NaN;
    while ((t[before + 1] ?? Number.NaN) <= now - CORNER_US) before += 1;
    while (after + 1 < t.length && (t[after] ?? Number.NaN) < now + CORNER_US) after += 1;
    const first = Math.max(0, Math.min(before, i - CORNER_READINGS));
    const last = Math.min(t.length - 1, Math.max(after, i + CORNER_READINGS));
    const ax = ((x[i] ?? 0) - (x[first] ?? 0)) / half.x;
    const ay = ((y[i] ?? 0) - (y[first] ?? 0)) / half.y;
    const bx = ((x[last] ?? 0) - (x[i] ?? 0)) / half.x;
    const by = ((y[last] ?? 0) - (y[i] ?? 0)) / half.y;
    const [before2, after2] = [ax * ax + ay * ay, bx * bx + by * by];
    if (before2 < CORNER_WAY ** 2 || after2 < CORNER_WAY ** 2) continue;
    const along = ax * bx + ay * by;
    if (along > 0 && along * along >= COS2_CORNER * before2 * after2) continue;
    slow.fill(0, Math.max(cleared, first), last + 1);
    cleared = last + 1;
  }
}
