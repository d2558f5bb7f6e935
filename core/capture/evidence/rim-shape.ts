/** The shape that the rim points of all turns make together. */
import { largestGap } from '../../geometry/angular-gap.ts';
import { fitCircle } from '../../geometry/fit-circle.ts';
import { fitEllipse } from '../../geometry/fit-ellipse.ts';
import { roundness } from '../../geometry/roundness.ts';
import type { Pair, StickFields } from '../../pad/stick.ts';
import type { RimShape, Turn } from './evidence.ts';

/** From this angle without a point on, an arc does not fix a shape (ISO 12181-1 takes whole circles). */
const WIDEST_GAP = 90;

/**
 * Least-squares circle, ellipse and roundness in counts over the rim points of all turns. They are fitted y up, so that
 * the ellipse's angle is counter-clockwise; centres are raw counts as reported. All null where an angular gap about
 * `about` reaches 90°, each also where it cannot be stated.
 */
export function rimShape(turns: readonly Turn[], about: Pair, fields: StickFields): RimShape {
  const points = turns.flatMap((turn) => turn.points.flatMap((point) => (point === null ? [] : [point.x, point.y])));
  if (largestGap(points, 0, 0) >= WIDEST_GAP) return { circle: null, ellipse: null, roundness: null };
  const circle = fitCircle(points);
  const ellipse = fitEllipse(points);
  const asReported = (centre: Pair): Pair => ({
    x: about.x + fields.x.up * centre.x,
    y: about.y + fields.y.up * centre.y,
  });
  return {
    circle: circle && { ...circle, ...asReported(circle) },
    ellipse: ellipse && { ...ellipse, ...asReported(ellipse) },
    roundness: roundness(points),
  };
}
