/** The one direction that a finding is shown at. */
import { stretchesOf } from '../../core/plot/finding-marks.ts';

const STEP = 5;

/** The middle of the longest stretch of its directions; null where it has none. */
export function findingDirection(directions: readonly number[]): number | null {
  const spans = stretchesOf(directions).map(({ first, last }) => ({
    first,
    steps: (last < first ? last + 360 - first : last - first) / STEP,
  }));
  const longest = spans.toSorted((a, b) => b.steps - a.steps)[0];
  return longest === undefined ? null : (longest.first + Math.floor(longest.steps / 2) * STEP) % 360;
}
