import { circleOnDiameter, circleThrough } from './circle-through.ts';
import { convexHull } from './convex-hull.ts';
import type { Circle } from './points.ts';

/**
 * Smallest circle that holds all points, in their unit; radius 0 for one point, null without points.
 * Exact: the circle rests on two points at the ends of a diameter or on three that leave no half of it free. From two
 * corners of the hull the circle grows through the farthest point each time until none lies outside; every step has a larger radius,
 * so it ends. Cost n log n for the hull and a few passes over its corners. The radius is the largest distance from
 * the centre, so that no point is outside by rounding.
 * Definition: minimum circumscribed circle of ISO 12181-1.
 */
export function enclosingCircle(points: ArrayLike<number>): Circle | null {
  return circleAroundHull(convexHull(points));
}

/** The same of a convex hull's corners. */
export function circleAroundHull(hull: Float64Array): Circle | null {
  if (hull.length === 0) return null;
  let rests = [0];
  let best: Circle = { x: at(hull, 0), y: at(hull, 1), radius: 0 };
  for (;;) {
    const farthest = findFarthest(hull, best.x, best.y);
    if (farthest.distance <= best.radius) return best;
    const grown = growThrough(hull, rests, farthest.index);
    if (grown === null || grown.circle.radius <= best.radius) {
      return { x: best.x, y: best.y, radius: farthest.distance };
    }
    best = grown.circle;
    rests = grown.rests;
  }
}

function at(points: ArrayLike<number>, i: number): number {
  return points[i] ?? NaN;
}

function findFarthest(points: ArrayLike<number>, x: number, y: number): { index: number; distance: number } {
  let index = 0;
  let distance = -1;
  for (let i = 0; 2 * i < points.length; i += 1) {
    const d = Math.hypot(at(points, 2 * i) - x, at(points, 2 * i + 1) - y);
    if (d <= distance) continue;
    distance = d;
    index = i;
  }
  return { index, distance };
}

/** Smallest circle through the new point that holds the up to three points the last circle rested on. */
function growThrough(
  hull: Float64Array,
  rests: readonly number[],
  added: number,
): { circle: Circle; rests: number[] } | null {
  const px = at(hull, 2 * added);
  const py = at(hull, 2 * added + 1);
  let best: { circle: Circle; rests: number[] } | null = null;
  const offer = (circle: Circle | null, on: number[]): void => {
    if (circle === null || (best !== null && circle.radius >= best.circle.radius)) return;
    // Rounding of a circle's centre is far below this; a true outsider of a step is far above.
    const limit = circle.radius * (1 + 1e-13);
    const holds = rests.every(
      (i) => on.includes(i) || Math.hypot(at(hull, 2 * i) - circle.x, at(hull, 2 * i + 1) - circle.y) <= limit,
    );
    if (holds) best = { circle, rests: on };
  };
  for (const [k, i] of rests.entries()) {
    const ix = at(hull, 2 * i);
    const iy = at(hull, 2 * i + 1);
    offer(circleOnDiameter(px, py, ix, iy), [added, i]);
    for (const j of rests.slice(k + 1)) {
      offer(circleThrough(px, py, ix, iy, at(hull, 2 * j), at(hull, 2 * j + 1)), [added, i, j]);
    }
  }
  return best;
}
