/** Runs of neighbouring directions in the same state of coverage. */
import { directionRuns, directionStep, type DirectionRun } from '../geometry/directions.ts';
import type { Coverage } from '../measure/rim-measure.ts';

/** Directions `first` to `last` in degrees, counter-clockwise; a run over 0° has last < first. */
export type Stretch = Pick<DirectionRun, 'first' | 'last'>;

/** The circular runs of one state among the directions, in order of their first direction. */
export function coverageStretches(states: readonly Coverage[], wanted: Coverage): DirectionRun[] {
  return directionRuns((index) => states[index] === wanted);
}

/** A stretch in words: `265–280°`, or `90°` for one direction. */
export function stretchName(stretch: Stretch): string {
  return stretch.first === stretch.last ? `${stretch.first}°` : `${stretch.first}–${stretch.last}°`;
}

/** A stretch as spans of an unrolled 0 … 360° axis: each direction owns half a step to both sides; cut in two at 0°. */
export function unrolledSpans(stretch: Stretch): (readonly [number, number])[] {
  const from = stretch.first - directionStep / 2;
  const to = stretch.last + directionStep / 2;
  if (stretch.last < stretch.first)
    return [
      [0, to],
      [from, 360],
    ];
  if (from >= 0) return [[from, to]];
  return to >= 360 + from
    ? [[0, 360]]
    : [
        [0, to],
        [360 + from, 360],
      ];
}
