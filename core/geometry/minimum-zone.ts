import { findBestCentre } from './best-centre.ts';
import { normalisePoints } from './normalise-points.ts';

/** Two concentric circles that hold all points between them, in the unit of the points. */
export interface Zone {
  readonly x: number;
  readonly y: number;
  readonly inner: number;
  readonly outer: number;
}

/**
 * Minimum zone: the two concentric circles with the least radial separation that hold all points between them, centre within the
 * points' convex hull (reference circles MZCI of ISO 12181-1). Exact, over all such centres: at its best the zone
 * rests on two outer and two inner points that alternate in angle. (Three and one cannot be: a unit vector is no mean of others.)
 * Null where the points have fewer than three corners, or where the search does not end (`findBestCentre`).
 */
export function minimumZone(points: ArrayLike<number>): Zone | null {
  const unit = normalisePoints(points);
  if (unit === null) return null;
  const found = findBestCentre({ outer: unit.hull, inner: unit.points }, unit.hull, unit.reach);
  if (found === null) return null;
  const { x, y, radius } = unit.circle;
  return {
    x: x + radius * found.x,
    y: y + radius * found.y,
    inner: radius * found.least,
    outer: radius * found.greatest,
  };
}
