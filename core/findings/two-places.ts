/** Parts points into two clouds. */
import type { Pair } from '../pad/stick.ts';

export interface TwoPlaces {
  /** From the place with more points to the one with fewer. */
  readonly x: number;
  readonly y: number;
  /** Standard deviation within the clouds along the line between them, pooled. */
  readonly sigma: number;
  /** Points of the rarer place. */
  readonly fewer: number;
}

const LEAST_POINTS = 6;

/**
 * Cuts the points in two along the line of their largest spread, where the sum of squares within both parts is least (Fisher 1958,
 * from memory). Null with fewer than six points.
 */
export function twoPlaces(points: readonly Pair[]): TwoPlaces | null {
  const n = points.length;
  if (n < LEAST_POINTS) return null;
  const axis = largestSpread(points);
  const along = points
    .map((point) => ({ point, at: point.x * axis.x + point.y * axis.y }))
    .toSorted((a, b) => a.at - b.at);
  let best: { readonly cut: number; readonly squares: number } | null = null;
  for (let cut = 1; cut < n; cut += 1) {
    const squares = squaresOf(along.slice(0, cut)) + squaresOf(along.slice(cut));
    if (best === null || squares < best.squares) best = { cut, squares };
  }
  if (best === null) return null;
  const parts = [along.slice(0, best.cut), along.slice(best.cut)].map((part) => part.map(({ point }) => point));
  const [more = [], less = []] = parts.toSorted((a, b) => b.length - a.length);
  const [from, to] = [meanOf(more), meanOf(less)];
  return { x: to.x - from.x, y: to.y - from.y, sigma: Math.sqrt(best.squares / (n - 2)), fewer: less.length };
}

function squaresOf(part: readonly { readonly at: number }[]): number {
  const mean = part.reduce((sum, { at }) => sum + at, 0) / part.length;
  return part.reduce((sum, { at }) => sum + (at - mean) ** 2, 0);
}

function meanOf(points: readonly Pair[]): Pair {
  const of = (axis: 'x' | 'y'): number => points.reduce((sum, point) => sum + point[axis], 0) / points.length;
  return { x: of('x'), y: of('y') };
}

/** Unit vector along the largest variance: half the angle of (xx − yy, 2xy). */
function largestSpread(points: readonly Pair[]): Pair {
  const mean = meanOf(points);
  let [xx, xy, yy] = [0, 0, 0];
  for (const { x, y } of points) {
    xx += (x - mean.x) ** 2;
    xy += (x - mean.x) * (y - mean.y);
    yy += (y - mean.y) ** 2;
  }
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  return { x: Math.cos(angle), y: Math.sin(angle) };
}
