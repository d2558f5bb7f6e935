import { angleOf } from './angle.ts';

/**
 * Largest angle without a point, in degrees, as seen from (x, y): 360 for one point or none. A point on (x, y) itself has no
 * direction and is left out. `points` is flat.
 */
export function largestGap(points: ArrayLike<number>, x: number, y: number): number {
  const angles: number[] = [];
  for (let i = 0; 2 * i + 1 < points.length; i += 1) {
    const dx = (points[2 * i] ?? NaN) - x;
    const dy = (points[2 * i + 1] ?? NaN) - y;
    if (dx !== 0 || dy !== 0) angles.push(angleOf(dx, dy));
  }
  const sorted = Float64Array.from(angles).sort();
  let gap = sorted.length === 0 ? 360 : (sorted[0] ?? NaN) + 360 - (sorted[sorted.length - 1] ?? NaN);
  for (let i = 1; i < sorted.length; i += 1) gap = Math.max(gap, (sorted[i] ?? NaN) - (sorted[i - 1] ?? NaN));
  return gap;
}
