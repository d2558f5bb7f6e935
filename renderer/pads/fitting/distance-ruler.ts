/** The ruler of distances round a target: where its marks stand, −1 at the field's lower end … 1 at its upper. */
import type { AxisLine } from '../axis-list.ts';
import { scalePosition } from './target-distance.ts';

export interface RulerMark {
  /** Distance in counts. */
  readonly counts: number;
  /** −1 … 1 along the ruler. */
  readonly position: number;
  readonly labelled: boolean;
}

export interface DistanceRuler {
  /** Half width of the band that is inside, 0 … 1. */
  readonly band: number;
  readonly marks: readonly RulerMark[];
  positionOf(counts: number): number;
}

/** Labels nearer to the band or the ends than this would run into another. */
const LABEL_ROOM = 0.09;

/** `tolerance` in counts, above 0. Marks stand at powers of ten; those within the band are left out. */
export function distanceRuler(axis: AxisLine, target: number, tolerance: number): DistanceRuler {
  const furthest = Math.max(axis.maximum - target, target - axis.minimum);
  const most = Math.max(2, furthest / tolerance);
  const positionOf = (counts: number): number => scalePosition(counts / tolerance, most);
  const band = positionOf(tolerance);
  const marks: RulerMark[] = [];
  for (let counts = 1; counts <= furthest; counts *= 10) {
    if (counts <= tolerance) continue;
    const position = positionOf(counts);
    const labelled = position > band + LABEL_ROOM && position < 1 - LABEL_ROOM / 2;
    marks.push({ counts, position, labelled }, { counts: -counts, position: -position, labelled });
  }
  return { band, marks, positionOf };
}
