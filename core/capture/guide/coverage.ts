/** Which directions of a gate the turns so far have covered. */
import { directionCount, directionRuns } from '../../geometry/directions.ts';
import type { Turn } from '../evidence/evidence.ts';
import type { Tally } from '../evidence/turn-counter.ts';

/** For each of the 72 directions the turns each way that have a rim point there. */
export function tallyDirections(turns: readonly Turn[]): Tally[] {
  const count = (way: Turn['way'], direction: number): number =>
    turns.filter((turn) => turn.way === way && (turn.points[direction] ?? null) !== null).length;
  return Array.from({ length: directionCount }, (_, direction) => ({
    clockwise: count('clockwise', direction),
    counterClockwise: count('counterClockwise', direction),
  }));
}

/** Directions, as indices, that fewer than `needed` turns one way or the other have covered. */
export function uncoveredDirections(covered: readonly Tally[], needed: number): number[] {
  return [...covered.keys()].filter((direction) => {
    const { clockwise = 0, counterClockwise = 0 } = covered[direction] ?? {};
    return clockwise < needed || counterClockwise < needed;
  });
}

/** Names of the stretches that directions make, in order, e.g. `90°`, `265°–280°`; one over 0° is named `355°–10°`. */
export function nameStretches(directions: readonly number[]): string[] {
  const isIn = new Set(directions);
  if (isIn.size === directionCount) return ['all around'];
  return directionRuns((index) => isIn.has(index)).map(({ first, last }) =>
    first === last ? `${first}°` : `${first}°–${last}°`,
  );
}
