/** Expanded uncertainty of a rest offset's magnitude. */
import type { StickMapping } from '../../core/mapping/mapping.ts';
import type { RestMeasure } from '../../core/measure/rest-measure.ts';

/**
 * u95 of |d| as a fraction, from the u95 of the rest point in counts (JCGM 100, 5.1.2): the axis parts divided by the
 * spans on the rest's side, weighted with the direction of d; the larger part where d is nothing. The axes are taken as
 * independent. Null where the rest has no stated uncertainty.
 */
export function offsetUncertainty(rest: RestMeasure, mapping: StickMapping): number | null {
  const { x, y } = rest.u95;
  if (x === null || y === null) return null;
  const partX = x / spanAt(mapping.x, rest.point.x);
  const partY = y / spanAt(mapping.y, rest.point.y);
  const { magnitude } = rest.offset;
  if (magnitude === 0) return Math.max(partX, partY);
  return Math.hypot((rest.offset.x / magnitude) * partX, (rest.offset.y / magnitude) * partY);
}

function spanAt(axis: StickMapping['x'], count: number): number {
  return count >= axis.centre ? axis.max - axis.centre : axis.centre - axis.min;
}
