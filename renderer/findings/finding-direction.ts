/** The one direction that a finding is shown at. */
import { directionStep, nearestDirection, runsOf } from '../../core/geometry/directions.ts';

/** The middle of the longest stretch of its directions; null where it has none. */
export function findingDirection(directions: readonly number[]): number | null {
  const longest = runsOf(directions).toSorted((a, b) => b.count - a.count)[0];
  return longest === undefined
    ? null
    : nearestDirection(longest.first + Math.floor((longest.count - 1) / 2) * directionStep);
}
