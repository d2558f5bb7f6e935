/** Directions in words: neighbours are one stretch. */
import { directionCount, runsOf } from '../../core/geometry/directions.ts';

/** Angles of directions in any order → e.g. `40° to 55°, 180°`; a stretch over 0° is one. */
export function sayStretches(directions: readonly number[]): string {
  if (directions.length >= directionCount) return 'every direction';
  return runsOf(directions)
    .map(({ first, last }) => (first === last ? `${first}°` : `${first}° to ${last}°`))
    .join(', ');
}
