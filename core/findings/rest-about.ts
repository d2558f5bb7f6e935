/** Where a stick rests that never settles. */
import type { Capture, StickTrack } from '../capture/evidence/track.ts';
import { median } from '../numeric/quantile.ts';
import type { Pair } from '../pad/stick.ts';

/**
 * Medians of the readings of its rest captures, raw counts: a stick that creeps back from all around lies about its rest for the most part of the
 * time between pushes. NaN without readings.
 */
export function restAbout({ x, y }: StickTrack, captures: readonly Capture[]): Pair {
  const spans = captures.filter(({ purpose }) => purpose === 'rest');
  const middleOf = (counts: Float64Array): number =>
    median(spans.flatMap(({ from, to }) => [...counts.subarray(from, to)]));
  return { x: middleOf(x), y: middleOf(y) };
}
