/** The rim point of each of the 72 directions, chosen among the turns; it does not depend on the mapping. */
import type { Turn } from '../capture/evidence/evidence.ts';
import { directionAngles } from '../geometry/directions.ts';
import type { Pair } from '../pad/stick.ts';
import type { Coverage } from './rim-measure.ts';

/** Turns each way from which on a direction is covered. */
const COVERING_TURNS = 2;

export interface DirectionPoint {
  /** Degrees counter-clockwise from +x. */
  readonly angle: number;
  /** Counts from the point that directions are taken about, y up; null where no turn has a reading. */
  readonly point: Pair | null;
  readonly state: Coverage;
  /** The points of all turns that have one, each way. */
  readonly clockwise: readonly Pair[];
  readonly counterClockwise: readonly Pair[];
}

/**
 * Keeps the median turn's point by radius in counts; of an even number of turns the lower of the two in the middle, so
 * that every point is one that was measured and none flatters the reach. `covered` takes two turns each way, `thin` is
 * fewer, `none` is no reading at all: nothing is interpolated.
 */
export function directionPoints(turns: readonly Turn[]): DirectionPoint[] {
  return directionAngles.map((angle, index) => {
    const clockwise = pointsOf(turns, 'clockwise', index);
    const counterClockwise = pointsOf(turns, 'counterClockwise', index);
    const point = lowerMedian([...clockwise, ...counterClockwise]);
    const state = coverage(clockwise.length, counterClockwise.length);
    return { angle, point, state, clockwise, counterClockwise };
  });
}

function pointsOf(turns: readonly Turn[], way: Turn['way'], index: number): Pair[] {
  return turns.flatMap((turn) => (turn.way === way ? (turn.points[index] ?? []) : []));
}

function coverage(clockwise: number, counterClockwise: number): Coverage {
  if (clockwise + counterClockwise === 0) return 'none';
  return Math.min(clockwise, counterClockwise) >= COVERING_TURNS ? 'covered' : 'thin';
}

function lowerMedian(points: readonly Pair[]): Pair | null {
  // Equal radii are put in order by their parts, so that the order of the turns does not matter.
  const sorted = points.toSorted((a, b) => square(a) - square(b) || a.x - b.x || a.y - b.y);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? null;
}

function square({ x, y }: Pair): number {
  return x * x + y * y;
}
