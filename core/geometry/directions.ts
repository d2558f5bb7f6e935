/** The directions of a gate: how many there are, where each stands, which is nearest to an angle and which are neighbours. */
import { wrapDegrees } from './angle.ts';

export const directionCount = 72;

/** Degrees from one direction to the next; each owns half of it to both sides. */
export const directionStep = 360 / directionCount;

/** The angle in the middle of each, counter-clockwise from +x: 0, 5 … 355°. */
export const directionAngles: readonly number[] = Array.from({ length: directionCount }, (_, i) => directionStep * i);

/** Which direction is nearest to an angle in degrees; halfway goes to the greater angle. */
export function directionIndex(angle: number): number {
  return Math.round(wrapDegrees(angle) / directionStep) % directionCount;
}

/** The same as the angle of its middle. */
export function nearestDirection(angle: number): number {
  return directionStep * directionIndex(angle);
}

/** Neighbouring directions `first` to `last` in degrees, counter-clockwise; a run over 0° has last < first. */
export interface DirectionRun {
  readonly first: number;
  readonly last: number;
  /** How many directions it holds. */
  readonly count: number;
}

/** The circular runs of those directions, by index, that something holds for, in order of their first; all of them are one from 0° on. */
export function directionRuns(holds: (index: number) => boolean): DirectionRun[] {
  const has = (index: number): boolean => holds(index % directionCount);
  const runs = directionAngles.flatMap((first, index) => {
    if (!has(index) || has(index + directionCount - 1)) return [];
    let count = 1;
    while (has(index + count)) count += 1;
    return [{ first, last: nearestDirection(first + directionStep * (count - 1)), count }];
  });
  return runs.length === 0 && has(0) ? [{ first: 0, last: 360 - directionStep, count: directionCount }] : runs;
}

/** The same of directions given by their angles, in any order. */
export function runsOf(angles: readonly number[]): DirectionRun[] {
  const marked = new Set(angles.map(directionIndex));
  return directionRuns((index) => marked.has(index));
}
