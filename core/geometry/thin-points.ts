import { extremesByDirection, outlineShare, shareAngle } from './extremes-by-direction.ts';
import type { Circle } from './points.ts';

/** Shorter sets are not worth the passes. */
const few = 1000;

/** Directions that a set is looked at in: some dozen points each, on long sets. */
function sharesFor(points: ArrayLike<number>, most: number): number {
  return Math.min(most, Math.max(64, 2 ** Math.floor(Math.log2(points.length / 64))));
}

/**
 * The points without those that can be no corner of the convex hull: all that lie inside the polygon of the farthest points by direction.
 * All of them where they are few or do not go all round.
 */
export function thinForHull(points: ArrayLike<number>): ArrayLike<number> {
  if (points.length < 2 * few) return points;
  const { x, y } = middleOf(points);
  // Wider shares: their farthest points differ less, and the polygon is smoother.
  const count = sharesFor(points, 512);
  const farthest = extremesByDirection(points, x, y, count, 'farthest');
  if (farthest === null) return points;
  const corners = new Float64Array(2 * count + 2);
  for (let b = 0; b <= count; b += 1) {
    const i = farthest[b % count] ?? 0;
    corners[2 * b] = (points[2 * i] ?? NaN) - x;
    corners[2 * b + 1] = (points[2 * i + 1] ?? NaN) - y;
  }
  return keep(points, (px, py) => {
    const dx = px - x;
    const dy = py - y;
    const share = outlineShare(dx, dy, count);
    const qx = corners[2 * share] ?? NaN;
    const qy = corners[2 * share + 1] ?? NaN;
    // On its way from the middle the point meets the side before its share's corner, or the one after.
    const other = 2 * (qx * dy - qy * dx >= 0 ? share + 1 : (share + count - 1) % count);
    const ox = corners[other] ?? NaN;
    const oy = corners[other + 1] ?? NaN;
    // Twice the area of the triangle middle, corner, corner; and how much of it the point leaves on its side.
    const whole = qx * oy - qy * ox;
    const part = (ox - qx) * (dy - qy) - (oy - qy) * (dx - qx);
    const isSharp = Math.abs(whole) > 1e-12 * (qx * qx + qy * qy + ox * ox + oy * oy);
    // A hair more than rounding, so that no corner is lost.
    return !(isSharp && part / whole > 1e-9);
  });
}

/** Points thinned for a search of centres, and how far from the circle's centre that search has to go. */
export interface ThinnedPoints {
  readonly points: ArrayLike<number>;
  readonly reach: number;
}

/**
 * The points that can be nearest to a centre worth looking at, with `circle` the smallest that holds all. Null where there are few, or
 * where they leave too much room for a statement.
 *
 * Let r be the least distance from the circle's centre o, and M the largest of the nearest points by direction. A centre c at a distance
 * δ from o has one of them within the angle β of its own direction, so that its nearest point is at most M − δ + β√(Mδ) away.
 * Beyond `reach` that is less than r: no larger empty circle, and, since no circle about c that holds all is smaller than `circle`, no narrower
 * zone. For centres within `reach` a point p is never nearest if another, q, has |p|² − |q|² ≥ 2·reach·|p − q| as seen from o.
 */
export function thinForNearest(points: ArrayLike<number>, circle: Circle): ThinnedPoints | null {
  if (points.length < 2 * few) return null;
  const { x, y, radius } = circle;
  const count = sharesFor(points, 4096);
  const nearest = extremesByDirection(points, x, y, count, 'nearest');
  if (nearest === null) return null;
  const squares = Float64Array.from(nearest, (i) => squareFrom(points, i, x, y));
  const least = Math.sqrt(squares.reduce((a, b) => Math.min(a, b)));
  const most = Math.sqrt(squares.reduce((a, b) => Math.max(a, b)));
  const angle = shareAngle(count);
  // Centres lie in the hull, at most `radius` off: where they lie beyond the nearest point, it must still be nearer than r.
  if (!(2 * least > radius * (1 + angle))) return null;
  const root = (angle * Math.sqrt(most) + Math.sqrt(angle * angle * most + 4 * (most - least))) / 2;
  const reach = Math.min(radius, root * root * (1 + 1e-9));
  const kept = keep(points, (px, py, i) => {
    const share = outlineShare(px - x, py - y, count);
    const q = nearest[share] ?? 0;
    if (i === q) return true;
    const gain = (px - x) ** 2 + (py - y) ** 2 - (squares[share] ?? NaN);
    const apart = (px - (points[2 * q] ?? NaN)) ** 2 + (py - (points[2 * q + 1] ?? NaN)) ** 2;
    return gain * gain < 4 * reach * reach * apart;
  });
  return { points: kept, reach };
}

function squareFrom(points: ArrayLike<number>, i: number, x: number, y: number): number {
  return ((points[2 * i] ?? NaN) - x) ** 2 + ((points[2 * i + 1] ?? NaN) - y) ** 2;
}

/** Middle of the bounding box. */
function middleOf(points: ArrayLike<number>): { x: number; y: number } {
  const low = [Infinity, Infinity];
  const high = [-Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 1) {
    const value = points[i] ?? NaN;
    if (value < (low[i & 1] ?? NaN)) low[i & 1] = value;
    if (value > (high[i & 1] ?? NaN)) high[i & 1] = value;
  }
  const [xLow = NaN, yLow = NaN] = low;
  const [xHigh = NaN, yHigh = NaN] = high;
  return { x: xLow + (xHigh - xLow) / 2, y: yLow + (yHigh - yLow) / 2 };
}

function keep(points: ArrayLike<number>, isKept: (x: number, y: number, i: number) => boolean): Float64Array {
  const kept = new Float64Array(points.length);
  let size = 0;
  for (let i = 0; 2 * i + 1 < points.length; i += 1) {
    const x = points[2 * i] ?? NaN;
    const y = points[2 * i + 1] ?? NaN;
    if (!isKept(x, y, i)) continue;
    kept[size] = x;
    kept[size + 1] = y;
    size += 2;
  }
  return kept.slice(0, size);
}
