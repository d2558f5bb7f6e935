/** The direction of one sweep. */
import type { Stretch } from '../capture/evidence/unbroken-stretches.ts';
import type { StickTrack } from '../capture/evidence/track.ts';
import { angleOf } from '../geometry/angle.ts';
import type { Pair } from '../pad/stick.ts';
import { runningMedian } from './axis-series.ts';

/**
 * Degrees counter-clockwise from +x in [0, 360): the direction of greatest variance of a sweep's readings, in shares of the
 * half travels `half` (counts), after a running median of five; its sense is from the beginning to the end. Null for
 * readings that all stand at one point.
 */
export function sweepAngle(track: StickTrack, { from, to }: Stretch, half: Pair): number | null {
  const x = shares(track.x.subarray(from, to), track.fields.x.up / half.x);
  const y = shares(track.y.subarray(from, to), track.fields.y.up / half.y);
  const length = x.length;
  const xMean = x.reduce((sum, value) => sum + value, 0) / length;
  const yMean = y.reduce((sum, value) => sum + value, 0) / length;
  let [xx, xy, yy] = [0, 0, 0];
  for (let i = 0; i < length; i += 1) {
    const dx = (x[i] ?? Number.NaN) - xMean;
    const dy = (y[i] ?? Number.NaN) - yMean;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
  }
  if (!(xx + yy > 0)) return null;
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const along = ((x.at(-1) ?? 0) - (x[0] ?? 0)) * Math.cos(angle) + ((y.at(-1) ?? 0) - (y[0] ?? 0)) * Math.sin(angle);
  const sense = along < 0 ? -1 : 1;
  return angleOf(sense * Math.cos(angle), sense * Math.sin(angle));
}

function shares(counts: Float64Array, scale: number): Float64Array {
  return runningMedian(counts).map((count) => scale * count);
}
