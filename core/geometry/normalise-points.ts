import { convexHullSorted, sortPoints } from './convex-hull.ts';
import { enclosingCircle } from './enclosing-circle.ts';
import type { Circle } from './points.ts';

/** Points moved and scaled so that their smallest enclosing circle is the unit circle about the origin. */
export interface UnitPoints {
  readonly circle: Circle;
  /** Distinct points. */
  readonly points: Float64Array;
  readonly hull: Float64Array;
}

/** Null unless the points have three corners at least: there is nothing to be inside of. */
export function normalisePoints(points: ArrayLike<number>): UnitPoints | null {
  const distinct = sortPoints(points);
  const hull = convexHullSorted(distinct);
  const circle = enclosingCircle(hull);
  if (hull.length < 6 || circle === null) return null;
  const move = (value: number, i: number): number => (value - (i % 2 === 0 ? circle.x : circle.y)) / circle.radius;
  return { circle, points: distinct.map(move), hull: hull.map(move) };
}
