/**
 * Aim `even`: least mean |R − 1| without a constraint, over whole spans.
 *
 * With b = 1/span², R = √(dx²·b_x + dy²·b_y) is concave in the b of its quadrant. So over a box of spans, each point with
 * R ≥ 1 throughout has a plane through its corners below it, each with R ≤ 1 throughout has the tangent plane of 1 − R below
 * it, and one that crosses 1 is at least 0. The planes add up to a plane, whose least value over the box is a lower bound
 * that misses the truth by the square of the box's width (but for the few points that cross), which keeps the search short.
 */
import { minimiseWhole } from './branch-and-bound.ts';
import { changeOf } from './change-of-spans.ts';
import { meanRadialMiss, spansFromArray, spansToArray, type Quadrants, type Spans } from './spans.ts';

/** Null when there are no points. */
export function solveEven(quadrants: Quadrants, largest: Spans, current: Spans): Spans | null {
  if (quadrants.count === 0) return null;
  const found = minimiseWhole({
    low: [1, 1, 1, 1],
    high: spansToArray(largest).map(Math.floor),
    guess: spansToArray(current),
    bound: (low, high) => lowerBound(quadrants, low, high),
    value: (point) => meanRadialMiss(quadrants, spansFromArray(point)),
    change: (point) => changeOf(spansFromArray(point), current),
  });
  return found === null ? null : spansFromArray(found);
}

/** The four b at the middle of the box and half its width there, and the slope of the sum of planes. */
interface Sum {
  base: number;
  readonly slope: [number, number, number, number];
}

/** Lower bound of the objective over a box of spans (xPlus, xMinus, yPlus, yMinus). */
function lowerBound(quadrants: Quadrants, low: readonly number[], high: readonly number[]): number {
  const sum: Sum = { base: 0, slope: [0, 0, 0, 0] };
  const least = high.map((span) => 1 / (span * span));
  const most = low.map((span) => 1 / (span * span));
  for (const [xSide, row] of quadrants.at.entries()) {
    for (const [ySide, points] of row.entries()) addPlanes(sum, points, least, most, xSide, 2 + ySide);
  }
  let bound = sum.base;
  for (let i = 0; i < 4; i += 1) bound -= (Math.abs(sum.slope[i] ?? 0) * ((most[i] ?? 0) - (least[i] ?? 0))) / 2;
  return Math.max(0, bound) / quadrants.count;
}

/** Adds the planes of one quadrant's points, written about the middle of the box. */
function addPlanes(
  sum: Sum,
  points: readonly number[],
  least: readonly number[],
  most: readonly number[],
  xIndex: number,
  yIndex: number,
): void {
  const x0 = least[xIndex] ?? 0;
  const x1 = most[xIndex] ?? 0;
  const y0 = least[yIndex] ?? 0;
  const y1 = most[yIndex] ?? 0;
  const xWidth = x1 - x0;
  const yWidth = y1 - y0;
  let slopeX = 0;
  let slopeY = 0;
  for (let i = 0; i < points.length; i += 2) {
    const dx = points[i] ?? 0;
    const dy = points[i + 1] ?? 0;
    const xx = dx * dx;
    const yy = dy * dy;
    const lowest = Math.sqrt(xx * x0 + yy * y0);
    if (lowest >= 1) {
      const alongX = Math.sqrt(xx * x1 + yy * y0);
      const alongY = Math.sqrt(xx * x0 + yy * y1);
      const highest = Math.sqrt(xx * x1 + yy * y1);
      const gx = xWidth > 0 ? (alongX - lowest + highest - alongY) / 2 : 0;
      const gy = yWidth > 0 ? (alongY - lowest + highest - alongX) / 2 : 0;
      // gx and gy are rises across the whole width; the plane is lowered until no corner is under it.
      sum.base +=
        Math.min(lowest + (gx + gy) / 2, alongX + (gy - gx) / 2, alongY + (gx - gy) / 2, highest - (gx + gy) / 2) - 1;
      if (xWidth > 0) slopeX += gx / xWidth;
      if (yWidth > 0) slopeY += gy / yWidth;
    } else if (xx * x1 + yy * y1 <= 1) {
      const middle = Math.sqrt((xx * (x0 + x1) + yy * (y0 + y1)) / 2);
      sum.base += 1 - middle;
      if (middle > 0) {
        slopeX -= xx / (2 * middle);
        slopeY -= yy / (2 * middle);
      }
    }
  }
  sum.slope[xIndex as 0 | 1] += slopeX;
  sum.slope[yIndex as 2 | 3] += slopeY;
}
