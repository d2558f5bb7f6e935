import { sortPoints } from './sort-points.ts';
import { thinForHull } from './thin-points.ts';

/**
 * Corners of the convex hull, counter-clockwise (y up) from the leftmost, flat: x0, y0, x1, y1 …
 * Duplicates and points on an edge are left out. One distinct point gives one corner, points on a line its two ends.
 * Andrew's monotone chain, n log n: the order along x keeps a point that is judged wrongly by rounding within rounding of the hull.
 */
export function convexHull(points: ArrayLike<number>): Float64Array {
  return hullOfSorted(sortPoints(thinForHull(points)));
}

/** The same of distinct points in order of x, then y. */
function hullOfSorted(sorted: Float64Array): Float64Array {
  const n = sorted.length / 2;
  if (n < 3) return sorted;
  const hull = new Float64Array(2 * n + 2);
  let size = 0;
  const take = (i: number, floor: number): void => {
    const x = sorted[2 * i] ?? NaN;
    const y = sorted[2 * i + 1] ?? NaN;
    while (size > floor && turnAt(hull, size, x, y) <= 0) size -= 1;
    hull[2 * size] = x;
    hull[2 * size + 1] = y;
    size += 1;
  };
  for (let i = 0; i < n; i += 1) take(i, 1);
  const lower = size;
  for (let i = n - 2; i >= 0; i -= 1) take(i, lower);
  // The last corner closes the round: it is the first one again.
  return hull.slice(0, 2 * (size - 1));
}

/** Positive where the way over the last two corners to (x, y) turns left. */
function turnAt(hull: Float64Array, size: number, x: number, y: number): number {
  const ax = hull[2 * size - 4] ?? NaN;
  const ay = hull[2 * size - 3] ?? NaN;
  const bx = hull[2 * size - 2] ?? NaN;
  const by = hull[2 * size - 1] ?? NaN;
  return (bx - ax) * (y - ay) - (by - ay) * (x - ax);
}
