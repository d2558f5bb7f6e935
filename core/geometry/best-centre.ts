import { hullEdges, meetEdges } from './hull-edges.ts';
import { linearStep } from './linear-step.ts';
import { provenReach } from './proven-reach.ts';
import { bandAt, narrowPoints, type Band, type BandPoints } from './radial-band.ts';

/** A centre with its band. */
export interface BandCentre extends Band {
  readonly x: number;
  readonly y: number;
}

/** Widths that differ by less are the same; points here have size 1. */
const tolerance = 1e-13;

/**
 * Most that is looked at, in points, before the search gives up; a square counts as a thousand beside its points. Ordinary sets need
 * under 1,000 squares and a few dozen passes; sets as thin as a line, whose best centre is not sharp, can need more than this.
 */
const effortLimit = 5e7;

/**
 * The centre within the hull whose band is narrowest, over all of it, not only near the start; null where the proof would not end.
 * Points must be normal (`normalisePoints`): the enclosing circle's centre, the origin, is always within the hull.
 *
 * Branch and bound over squares of centres, exact to `tolerance`. A descent (`descend`) finds a centre where the band rests on its
 * contacts; around it `provenReach` shows that nothing is narrower. Any other square is dropped when its band, less what a centre can
 * change within the square, is not narrower (distances change by at most the move), or when its linear programme says
 * so, which is sharp to second order; else it is cut in four. Each square passes only those points on that can be
 * nearest or farthest in it, so that the sum over all squares stays near a few passes over the points.
 */
export function findBestCentre(points: BandPoints, hull: Float64Array): BandCentre | null {
  const edges = hullEdges(hull);
  const settled: { x: number; y: number; reach: number }[] = [];
  let best = null as BandCentre | null;
  const settle = (x: number, y: number): void => {
    const found = descend(points, edges, x, y);
    if (found.reach > 0) settled.push(found);
    if (best === null || found.width < best.width) best = found;
  };
  settle(0, 0);
  const leastWidth = (): number => (best?.width ?? Infinity) - tolerance;
  const rate = points.outer.length === 0 ? 1 : 2;

  // Level by level: large squares improve the best centre before small ones are looked at.
  let effort = 0;
  const squares = [{ x: 0, y: 0, half: 1, points, edges }];
  for (const { x, y, half, ...around } of squares) {
    effort += 1000 + (around.points.outer.length + around.points.inner.length + around.edges.length) / 2;
    if (effort > effortLimit) return null;
    const reach = half * Math.SQRT2;
    if (settled.some((s) => Math.hypot(s.x - x, s.y - y) + reach <= s.reach)) continue;
    const place = meetEdges(around.edges, x, y, reach);
    if (place.depth < -reach) continue;
    const band = bandAt(around.points, x, y);
    if (band.width - rate * reach >= leastWidth()) continue;
    if (place.depth >= 0 && band.width < leastWidth()) settle(x, y);
    const narrowed = narrowPoints(around.points, band, x, y, reach);
    const curve = (reach * reach) / (2 * band.least);
    // The programme's bound is at most the width here: where that would not do, it is not worth the passes.
    if (band.width - curve >= leastWidth()) {
      const step = linearStep(narrowed, place.edges, band, x, y, reach);
      if (step.bound - curve >= leastWidth()) continue;
      // Where the best centre lies on the hull's edge, only moves onto the edge find it.
      const [sx, sy] = [x + step.x, y + step.y];
      if (bandAt(narrowed, sx, sy).width < leastWidth() && isWithin(edges, sx, sy)) settle(sx, sy);
    }
    if (reach < tolerance) continue;
    for (const [dx, dy] of quarters) {
      squares.push({ x: x + dx * half, y: y + dy * half, half: half / 2, points: narrowed, edges: place.edges });
    }
  }
  return best;
}

const quarters = [
  [-0.5, -0.5],
  [-0.5, 0.5],
  [0.5, -0.5],
  [0.5, 0.5],
] as const;

/**
 * Goes down from a centre by linear programmes, each move halved until it narrows the band and stays in the hull; at the end the band
 * rests on its contacts to the last digit (each programme is a Newton step on them).
 */
function descend(points: BandPoints, edges: Float64Array, x: number, y: number): BandCentre & { reach: number } {
  let here = { x, y, ...bandAt(points, x, y) };
  for (;;) {
    const step = linearStep(points, edges, here, here.x, here.y, 0.5);
    const next = narrowAlong(points, edges, here, step);
    if (next === null) return { ...here, reach: provenReach(here, step.contacts) };
    here = next;
  }
}

function narrowAlong(
  points: BandPoints,
  edges: Float64Array,
  from: BandCentre,
  step: { x: number; y: number; bound: number },
): BandCentre | null {
  if (from.width - step.bound < 1e-16) return null;
  for (let share = 1; share > 1e-6; share /= 2) {
    const x = from.x + share * step.x;
    const y = from.y + share * step.y;
    if (!isWithin(edges, x, y)) continue;
    const band = bandAt(points, x, y);
    if (band.width < from.width) return { x, y, ...band };
  }
  return null;
}

/** In the hull, to rounding. */
function isWithin(edges: Float64Array, x: number, y: number): boolean {
  return meetEdges(edges, x, y, 0).depth >= -tolerance;
}
