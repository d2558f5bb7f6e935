/** The centre of a proposal, in whole counts. */
import { convexHull } from '../geometry/convex-hull.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { Pair } from '../pad/stick.ts';
import type { Dwell } from '../capture/evidence/evidence.ts';
import type { CentreBy } from './proposal.ts';
import { minimiseWhole } from './branch-and-bound.ts';

/** `mean`: the mean of the rest points, rounded. `steadiest`: the least largest |d| over all settled readings under the current edges. */
export function chooseCentre(dwells: readonly Dwell[], by: CentreBy, edges: StickMapping): Pair | null {
  return by === 'mean' ? meanCentre(dwells) : steadiestCentre(dwells, edges);
}

function meanCentre(dwells: readonly Dwell[]): Pair | null {
  if (dwells.length === 0) return null;
  const sum = dwells.reduce((total, dwell) => ({ x: total.x + dwell.point.x, y: total.y + dwell.point.y }), {
    x: 0,
    y: 0,
  });
  return { x: Math.round(sum.x / dwells.length), y: Math.round(sum.y / dwells.length) };
}

/**
 * |d| of a reading is convex in the reading, so the largest stands at a corner of the readings' hull; the best centre lies
 * within their extents, for a step outside makes every |d| larger. Null when the extents leave no centre between the edges.
 */
function steadiestCentre(dwells: readonly Dwell[], edges: StickMapping): Pair | null {
  const hull = Array.from(convexHull(dwells.flatMap((dwell) => dwell.readings)));
  if (hull.length === 0) return null;
  const xs = hull.filter((_, index) => index % 2 === 0);
  const ys = hull.filter((_, index) => index % 2 === 1);
  const x = candidates(xs, edges.x);
  const y = candidates(ys, edges.y);
  // The search wants numbers from 1.
  const found = minimiseWhole({
    low: [1, 1],
    high: [x.last - x.first + 1, y.last - y.first + 1],
    guess: [Math.round(edges.x.centre) - x.first + 1, Math.round(edges.y.centre) - y.first + 1],
    bound: (low, high) => largestOffset(xs, ys, span(low, high, 0, x.first), span(low, high, 1, y.first), edges),
    value: (point) => largestOffset(xs, ys, span(point, point, 0, x.first), span(point, point, 1, y.first), edges),
    change: (point) =>
      Math.abs((point[0] ?? 0) - 1 + x.first - edges.x.centre) +
      Math.abs((point[1] ?? 0) - 1 + y.first - edges.y.centre),
  });
  return found === null ? null : { x: (found[0] ?? 0) - 1 + x.first, y: (found[1] ?? 0) - 1 + y.first };
}

/** Whole counts within the readings' extents and strictly between the edges. */
function candidates(values: readonly number[], axis: { min: number; max: number }): { first: number; last: number } {
  return {
    first: Math.max(Math.floor(Math.min(...values)), Math.floor(axis.min) + 1),
    last: Math.min(Math.ceil(Math.max(...values)), Math.ceil(axis.max) - 1),
  };
}

function span(low: readonly number[], high: readonly number[], index: number, first: number): [number, number] {
  return [(low[index] ?? 0) - 1 + first, (high[index] ?? 0) - 1 + first];
}

/** Largest over the readings of the least |d| that any centre of the box gives it. */
function largestOffset(
  xs: readonly number[],
  ys: readonly number[],
  xCentres: readonly [number, number],
  yCentres: readonly [number, number],
  edges: StickMapping,
): number {
  let largest = 0;
  for (let i = 0; i < xs.length; i += 1) {
    const x = leastOffset(xs[i] ?? 0, xCentres, edges.x);
    const y = leastOffset(ys[i] ?? 0, yCentres, edges.y);
    largest = Math.max(largest, Math.sqrt(x * x + y * y));
  }
  return largest;
}

/** |d| is monotone in the centre on either side of the reading, so the least stands at an end of the interval, or is 0 inside it. */
function leastOffset(u: number, [low, high]: readonly [number, number], axis: { min: number; max: number }): number {
  if (u >= low && u <= high) return 0;
  return Math.min(offset(u, low, axis), offset(u, high, axis));
}

function offset(u: number, centre: number, axis: { min: number; max: number }): number {
  return u >= centre ? (u - centre) / (axis.max - centre) : (centre - u) / (centre - axis.min);
}
