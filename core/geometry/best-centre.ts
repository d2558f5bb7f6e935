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
 * The centre within the hull, and within `reach` of the origin along either axis, whose band is narrowest: over all of them, not only
 * near a start; null where the proof would not end. Points must be normal (`normalisePoints`): the enclosing circle's centre, the
 * origin, is always within the hull.
 *
 * Branch and bound over squares of centres, exact to `tolerance`. A descent (`descend`) within a square finds a centre where the band
 * rests on its contacts; around it `provenReach` shows that nothing is narrower. Any other square is dropped when its band, less
 * what a centre can change within the square, is not narrower (distances change by at most the move), or when its linear
 * programme says so, which is sharp to second order; else it is cut in four. Each square passes only those points on that can be
 * nearest or farthest in it, so that the sum over all squares stays near a few passes over the points.
 */
export function findBestCentre(points: BandPoints, hull: Float64Array, reach: number): BandCentre | null {
  const settled: { x: number; y: number; reach: number }[] = [];
  let best = null as BandCentre | null;
  const settle = (among: BandPoints, walls: Float64Array, x: number, y: number): void => {
    const found = descend(among, walls, x, y);
    if (found.reach > 0) settled.push(found);
    if (best === null || found.width < best.width) best = found;
  };
  const leastWidth = (): number => (best?.width ?? Infinity) - tolerance;
  const rate = points.outer.length === 0 ? 1 : 2;

  // Level by level: large squares improve the best centre before small ones are looked at.
  let effort = 0;
  const squares = [{ x: 0, y: 0, half: reach, points, edges: hullEdges(hull) }];
  for (const { x, y, half, ...around } of squares) {
    effort += 1000 + (around.points.outer.length + around.points.inner.length + around.edges.length) / 2;
    if (effort > effortLimit) return null;
    const far = half * Math.SQRT2;
    if (settled.some((s) => Math.hypot(s.x - x, s.y - y) + far <= s.reach)) continue;
    const place = meetEdges(around.edges, x, y, far);
    if (place.depth < -far) continue;
    const band = bandAt(around.points, x, y);
    if (band.width - rate * far >= leastWidth()) continue;
    const narrowed = narrowPoints(around.points, band, x, y, far);
    const walls = withSides(place.edges, x, y, half);
    if (place.depth >= -tolerance && band.width < leastWidth()) settle(narrowed, walls, x, y);
    const curve = (far * far) / (2 * band.least);
    // The programme's bound is at most the width here: where that would not do, it is not worth the passes.
    if (band.width - curve >= leastWidth()) {
      const step = linearStep(narrowed, walls, band, x, y, far);
      if (step.bound - curve >= leastWidth()) continue;
      // A second valley may be as low as the best: only a proof of its own ends the search there. And where the best centre lies on
      // the hull's edge, only moves onto the edge find it.
      const [sx, sy] = [x + step.x, y + step.y];
      // Beside a centre that was settled already a square is first made small enough to hold only one of them.
      const isKnown = settled.some(
        (s) => Math.hypot(s.x - sx, s.y - sy) <= s.reach || Math.hypot(s.x - x, s.y - y) <= far,
      );
      if (!isKnown && isWithin(walls, sx, sy)) settle(narrowed, walls, sx, sy);
    }
    if (far < tolerance) continue;
    for (const [dx, dy] of quarters) {
      squares.push({ x: x + dx * half, y: y + dy * half, half: half / 2, points: narrowed, edges: place.edges });
    }
  }
  return best;
}

/** The edges, and the four sides of the square: a move that they hold stays in both. */
function withSides(edges: Float64Array, x: number, y: number, half: number): Float64Array {
  const both = new Float64Array(edges.length + 12);
  both.set(edges);
  both.set([1, 0, half - x, -1, 0, half + x, 0, 1, half - y, 0, -1, half + y], edges.length);
  return both;
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
