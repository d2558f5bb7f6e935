import { bisectRising } from './bisect.ts';
import { mean } from './mean.ts';

/**
 * The line that a characteristic is held against: `terminal`, through its ends; `independent`, placed so that the largest deviation
 * is least; `zero`, through its lower end, with the slope that makes the largest deviation least.
 * Definitions: ISA-51.1 and IEC 61298-2 (from memory).
 */
export type LinearityLine = 'terminal' | 'independent' | 'zero';

/** The line and the largest |y − line| of all points, in the unit of y; divided by the span it is the linearity of a data sheet. */
export interface Linearity {
  readonly slope: number;
  readonly intercept: number;
  readonly deviation: number;
}

/**
 * Linearity of readings y at inputs x, in any order; several readings at the same input all count, and their mean is the end of the
 * characteristic where the input is the least or the greatest. Null with fewer than two different inputs, columns of unequal length, or
 * values that are no number. Exact: the largest deviation is convex in the slope, whose best value is found to the last digit.
 */
export function linearity(x: ArrayLike<number>, y: ArrayLike<number>, line: LinearityLine): Linearity | null {
  const points = Array.from({ length: x.length }, (_, i) => ({ x: x[i] ?? NaN, y: y[i] ?? NaN }));
  const isNumber = points.every((point) => Number.isFinite(point.x) && Number.isFinite(point.y));
  const low = meanAt(points, Math.min(...points.map((point) => point.x)));
  const high = meanAt(points, Math.max(...points.map((point) => point.x)));
  if (x.length !== y.length || !isNumber || !(high.x > low.x)) return null;
  // Seen from the lower end, so that numbers far from 0 keep their digits.
  const seen = points.map((point) => ({ x: point.x - low.x, y: point.y - low.y }));
  const terminal = (high.y - low.y) / (high.x - low.x);
  const slope = line === 'terminal' ? terminal : bestSlope(seen, line);
  const { least, greatest } = extremes(seen, slope);
  const lift = line === 'independent' ? (least.off + greatest.off) / 2 : 0;
  return {
    slope,
    intercept: low.y + lift - slope * low.x,
    deviation: Math.max(greatest.off - lift, lift - least.off),
  };
}

interface Point {
  readonly x: number;
  readonly y: number;
}

function meanAt(points: readonly Point[], x: number): Point {
  return { x, y: mean(points.filter((point) => point.x === x).map((point) => point.y)) };
}

/** The points farthest below and above the line y = slope·x, and how far they lie off it. */
function extremes(points: readonly Point[], slope: number) {
  let least = { x: 0, off: Infinity };
  let greatest = { x: 0, off: -Infinity };
  for (const point of points) {
    const off = point.y - slope * point.x;
    if (off < least.off) least = { x: point.x, off };
    if (off > greatest.off) greatest = { x: point.x, off };
  }
  return { least, greatest };
}

/** Where the largest deviation stops falling and begins to rise. */
function bestSlope(points: readonly Point[], line: 'independent' | 'zero'): number {
  const rise = (slope: number): number => {
    const { least, greatest } = extremes(points, slope);
    // Of the free line the width between the extremes counts, of the fixed one the larger of the two.
    return line === 'independent' ? least.x - greatest.x : -least.off - greatest.off;
  };
  let reach = 1;
  while (rise(-reach) >= 0 || rise(reach) < 0) reach *= 2;
  return bisectRising(rise, -reach, reach);
}
