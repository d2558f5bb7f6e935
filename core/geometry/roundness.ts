import { largestGap } from './angular-gap.ts';
import { enclosingCircle } from './enclosing-circle.ts';
import { fitCircle } from './fit-circle.ts';
import { maximumInscribed } from './maximum-inscribed.ts';
import { minimumZone } from './minimum-zone.ts';
import { bandAt } from './radial-band.ts';

/** Roundness deviation RONt against each reference circle of ISO 12181-1, in the unit of the points. */
export interface Roundness {
  readonly leastSquares: number;
  readonly minimumZone: number;
  readonly minimumCircumscribed: number;
  readonly maximumInscribed: number;
}

/** An open arc does not fix a centre: from this gap on nothing is said. */
const gapDegrees = 90;

/**
 * RONt = largest minus least distance of the points from the centre of the reference circle; `minimumZone` is never above the others.
 * Null when the largest angle without a point, about the least-squares centre, reaches 90°, and where a circle cannot be stated.
 * Source: ISO 12181-1:2011 (definitions from memory).
 */
export function roundness(points: ArrayLike<number>): Roundness | null {
  const leastSquares = fitCircle(points);
  // Four points a right angle apart leave gaps of 90° less a rounding.
  if (leastSquares === null || largestGap(points, leastSquares.x, leastSquares.y) > gapDegrees - 1e-9) return null;
  const zone = minimumZone(points);
  const circumscribed = enclosingCircle(points);
  const inscribed = maximumInscribed(points);
  if (zone === null || circumscribed === null || inscribed === null) return null;
  const flat = Float64Array.from(points);
  const width = (centre: { x: number; y: number }): number =>
    bandAt({ outer: flat, inner: flat }, centre.x, centre.y).width;
  const others = {
    leastSquares: width(leastSquares),
    minimumCircumscribed: width(circumscribed),
    maximumInscribed: width(inscribed),
  };
  // Where a centre is the zone's own, the two differ by rounding.
  return { ...others, minimumZone: Math.min(width(zone), ...Object.values(others)) };
}
