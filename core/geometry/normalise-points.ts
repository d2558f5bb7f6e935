import { convexHull } from './convex-hull.ts';
import { circleAroundHull } from './enclosing-circle.ts';
import type { Circle } from './points.ts';
import { sortPoints } from './sort-points.ts';
import { thinForNearest } from './thin-points.ts';

/** Points moved and scaled so that their smallest enclosing circle is the unit circle about the origin. */
export interface UnitPoints {
  readonly circle: Circle;
  /** Distinct points, all that can be nearest to a centre within `reach` of the origin. */
  readonly points: Float64Array;
  readonly hull: Float64Array;
  /** How far from the origin a centre is worth looking at; 1 at most. */
  readonly reach: number;
}

/** Null unless the points have three corners at least: there is nothing to be inside of. */
export function normalisePoints(points: ArrayLike<number>): UnitPoints | null {
  const hull = convexHull(points);
  const circle = circleAroundHull(hull);
  if (hull.length < 6 || circle === null) return null;
  const { x, y, radius } = circle;
  const thinned = thinForNearest(points, circle) ?? { points, reach: radius };
  const move = (value: number, i: number): number => (value - (i % 2 === 0 ? x : y)) / radius;
  const moved = hull.map(move);
  const areAllCorners = hull.length === points.length && thinned.points.length === points.length;
  return {
    circle,
    // Where every point is a corner they are distinct and in order already.
    points: areAllCorners ? moved : sortPoints(thinned.points).map(move),
    hull: moved,
    reach: thinned.reach / radius,
  };
}
