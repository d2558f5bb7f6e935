/**
 * Point sets of core/geometry are flat: x0, y0, x1, y1 … in any array of numbers, all finite; the unit is the caller's.
 * This file takes them to where the arithmetic is best and back.
 */

/** A circle; centre and radius in the unit of the points. */
export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Points moved by −(x, y) and divided by `scale`: mean at the origin, root mean square distance 1. */
export interface StandardPoints {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
  readonly points: Float64Array;
}

/**
 * Moves and scales points so that sums of their powers lose no digits (far-off centres, counts of any size).
 * Null without points, or where all are the same.
 */
export function standardisePoints(points: ArrayLike<number>): StandardPoints | null {
  const n = Math.floor(points.length / 2);
  const xFirst = points[0] ?? NaN;
  const yFirst = points[1] ?? NaN;
  let xSum = 0;
  let ySum = 0;
  for (let i = 0; i < n; i += 1) {
    xSum += (points[2 * i] ?? NaN) - xFirst;
    ySum += (points[2 * i + 1] ?? NaN) - yFirst;
  }
  const x = xFirst + xSum / n;
  const y = yFirst + ySum / n;
  const moved = new Float64Array(2 * n);
  let squares = 0;
  for (let i = 0; i < n; i += 1) {
    const dx = (points[2 * i] ?? NaN) - x;
    const dy = (points[2 * i + 1] ?? NaN) - y;
    moved[2 * i] = dx;
    moved[2 * i + 1] = dy;
    squares += dx * dx + dy * dy;
  }
  const scale = Math.sqrt(squares / n);
  if (!(scale > 0 && Number.isFinite(scale))) return null;
  for (let i = 0; i < moved.length; i += 1) moved[i] = (moved[i] ?? NaN) / scale;
  return { x, y, scale, points: moved };
}
