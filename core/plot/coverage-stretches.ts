/** Runs of neighbouring directions in the same state of coverage. */
import type { Coverage } from '../measure/rim-measure.ts';

/** Directions `first` to `last` in degrees, counter-clockwise; a run over 0° has last < first. */
export interface Stretch {
  readonly first: number;
  readonly last: number;
}

const STEP = 5;

/** The circular runs of one state among the directions 0, 5 … 355°, in order of their first direction. */
export function coverageStretches(states: readonly Coverage[], wanted: Coverage): Stretch[] {
  const count = states.length;
  if (count === 0) return [];
  if (states.every((state) => state === wanted)) return [{ first: 0, last: (count - 1) * STEP }];
  const stretches: Stretch[] = [];
  for (let first = 0; first < count; first += 1) {
    if (states[first] !== wanted || states[(first + count - 1) % count] === wanted) continue;
    let last = first;
    while (states[(last + 1) % count] === wanted) last = (last + 1) % count;
    stretches.push({ first: first * STEP, last: last * STEP });
  }
  return stretches;
}

/** A stretch in words: `265–280°`, or `90°` for one direction. */
export function stretchName(stretch: Stretch): string {
  return stretch.first === stretch.last ? `${stretch.first}°` : `${stretch.first}–${stretch.last}°`;
}

/** A stretch as spans of an unrolled 0 … 360° axis: each direction owns half a step to both sides; cut in two at 0°. */
export function unrolledSpans(stretch: Stretch): (readonly [number, number])[] {
  const from = stretch.first - STEP / 2;
  const to = stretch.last + STEP / 2;
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
