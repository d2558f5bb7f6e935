/** Which readings of a stick move slowly, so that what is left of them is noise. */
import type { StickTrack } from '../capture/evidence/track.ts';
import type { Stretch } from '../capture/evidence/unbroken-stretches.ts';
import { runningMedian } from './axis-series.ts';

/** Faster than so many half ranges a second the stick is pushed or springs back, and so near to it in time it still does. */
const FASTEST = 6;
const NEAR_US = 100_000;

/** 1 for each reading of a stretch that is not within 100 ms of faster motion on either axis. */
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
  return slow;
}
