/** Noise of a stick so restless that its releases never settle. */
import { findCaptures } from '../capture/evidence/find-captures.ts';
import type { Track } from '../capture/evidence/track.ts';
import { stepNoise } from '../measure/step-noise.ts';
import { median } from '../numeric/quantile.ts';
import type { Pair, StickId } from '../pad/stick.ts';

/** Readings within this share of the field's range about their median stand at the rest: in a rest capture most do. */
const NEAR_SHARE = 0.1;
const LEAST_READINGS = 200;

/**
 * σ of each axis in counts, from the rest captures: that of neighbouring readings near the rest, whatever slow motion it sits
 * on (see `stepNoise`). `step` is the effective step of the counts. Null without a rest capture of at least 200 such readings.
 */
export function unsettledNoise(track: Track, stick: StickId, step: Pair): Pair | null {
  const readings = track.sticks[stick];
  if (readings === undefined) return null;
  const rests = findCaptures(track, stick).captures.filter(({ purpose }) => purpose === 'rest');
  const ofAxis = (axis: 'x' | 'y'): number | null => {
    const { minimum, maximum } = readings.fields[axis];
    const parts = rests.map(({ from, to }) => readings[axis].subarray(from, to));
    const rest = median(parts.flatMap((part) => Array.from(part)));
    const near = parts.flatMap((part) => runsNear(part, rest, NEAR_SHARE * (maximum - minimum)));
    const count = near.reduce((sum, run) => sum + Math.max(0, run.length - 2), 0);
    return count < LEAST_READINGS ? null : stepNoise(near, step[axis]);
  };
  const [x, y] = [ofAxis('x'), ofAxis('y')];
  return x === null || y === null ? null : { x, y };
}

/** Stretches of readings side by side that all stand near the rest. */
function runsNear(counts: Float64Array, rest: number, near: number): Float64Array[] {
  const runs: Float64Array[] = [];
  let from = 0;
  for (let i = 0; i <= counts.length; i += 1) {
    const count = counts[i];
    if (count !== undefined && Math.abs(count - rest) <= near) continue;
    if (i - from > 2) runs.push(counts.subarray(from, i));
    from = i + 1;
  }
  return runs;
}
