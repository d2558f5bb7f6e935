/** How far a reading is from its target, and in which words. */
import type { AxisLine } from '../axis-list.ts';

export interface TargetDistance {
  /** Reading less target in raw counts. */
  readonly counts: number;
  readonly inside: boolean;
  /** |counts| in tolerances. */
  readonly ratio: number;
  /** The side the reading lies on: the word of the field's end it leans to, or "on target". */
  readonly side: string;
}

/** Inside means at most the tolerance away (counts, above 0). */
export function distanceToTarget(
  mean: number,
  target: number,
  tolerance: number,
  axis: Pick<AxisLine, 'lowEnd' | 'highEnd'>,
): TargetDistance {
  const counts = mean - target;
  const ratio = Math.abs(counts) / tolerance;
  const side = counts === 0 ? 'on target' : counts > 0 ? axis.highEnd : axis.lowEnd;
  return { counts, inside: Math.abs(counts) <= tolerance, ratio, side };
}

/**
 * Position on the distance scale, −1 … 1: even within the tolerance, which fills the middle quarter, and by equal
 * ratios outside of it, so that one scale shows both the last count and a stick that hangs at the end of its field.
 * `most` is the distance in tolerances at the end of the scale (above 1).
 */
export function scalePosition(countsInTolerances: number, most: number): number {
  const size = Math.abs(countsInTolerances);
  const place = size <= 1 ? 0.25 * size : 0.25 + 0.75 * Math.min(1, Math.log(size) / Math.log(most));
  return Math.sign(countsInTolerances) * place;
}
