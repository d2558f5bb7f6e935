/** A stretch of a log as a strip: raw counts against time, thinned so that no peak is lost. */
import type { StickTrack } from '../capture/evidence/track.ts';
import { decimateExtremes, POINTS_A_BUCKET } from './decimate-extremes.ts';

/** Microseconds of the log and raw counts as reported, in turn. */
export interface LogStrip {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** From `fromUs` to `toUs`, in so many slices of time, of each its first, least, greatest and last reading. */
export function logStrip(track: StickTrack, fromUs: number, toUs: number, slices: number): LogStrip {
  const out = new Float64Array(2 * POINTS_A_BUCKET * slices);
  const thin = (v: Float64Array): number[] => {
    const column = { t: track.t, v, length: track.t.length };
    return Array.from(out.subarray(0, 2 * decimateExtremes(column, { from: fromUs, to: toUs }, slices, out)));
  };
  return { x: thin(track.x), y: thin(track.y) };
}
