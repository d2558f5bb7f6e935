/** How far the rim is from full output, over the directions that are covered. */
import type { DirectionMeasure, RimMeasure } from './rim-measure.ts';

/** A reach this little below 1 is full: rounding of a point that lies on the unit circle. */
const ROUNDING = 1e-9;

type RimErrors = Pick<
  RimMeasure,
  'leastReach' | 'overreach' | 'meanRadialError' | 'rmsRadialError' | 'fullReachShare' | 'atLimitShare'
>;

/**
 * Least reach and where; overreach = largest reach − 1 and where (negative while all fall short); mean radial error =
 * mean |seen − 1| and the root of the mean square; share of the directions that reach 1; share of those whose count
 * stands at a field's limit, where the reach is "at least". All null while no direction is covered.
 */
export function rimErrors(directions: readonly DirectionMeasure[]): RimErrors {
  let least: { value: number; angle: number } | null = null;
  let most: { value: number; angle: number } | null = null;
  let count = 0;
  let sum = 0;
  let squares = 0;
  let full = 0;
  let atLimit = 0;
  for (const { angle, covered, reach, seen, atLimit: limited } of directions) {
    if (!covered || reach === null || seen === null) continue;
    count += 1;
    sum += Math.abs(seen - 1);
    squares += (seen - 1) ** 2;
    if (reach >= 1 - ROUNDING) full += 1;
    if (limited) atLimit += 1;
    if (least === null || reach < least.value) least = { value: reach, angle };
    if (most === null || reach - 1 > most.value) most = { value: reach - 1, angle };
  }
  return {
    leastReach: least,
    overreach: most,
    meanRadialError: count === 0 ? null : sum / count,
    rmsRadialError: count === 0 ? null : Math.sqrt(squares / count),
    fullReachShare: count === 0 ? null : full / count,
    atLimitShare: count === 0 ? null : atLimit / count,
  };
}
