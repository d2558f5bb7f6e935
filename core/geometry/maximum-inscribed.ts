import { findBestCentre } from './best-centre.ts';
import { normalisePoints } from './normalise-points.ts';
import type { Circle } from './points.ts';

/**
 * Maximum inscribed circle: the largest circle with its centre within the points' convex hull that has no point inside, in the
 * unit of the points (reference circle MICI of ISO 12181-1). Exact, over all such centres; of several equally large ones, one.
 * Null where the points have fewer than three corners, or where the search does not end (`findBestCentre`).
 */
export function maximumInscribed(points: ArrayLike<number>): Circle | null {
  const unit = normalisePoints(points);
  if (unit === null) return null;
  const found = findBestCentre({ outer: new Float64Array(0), inner: unit.points }, unit.hull, unit.reach);
  if (found === null) return null;
  const { x, y, radius } = unit.circle;
  return { x: x + radius * found.x, y: y + radius * found.y, radius: radius * found.least };
}
