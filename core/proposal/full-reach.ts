/**
 * Aim `full-reach`: least mean |R − 1| subject to R ≥ 1 + guard in every covered direction, over whole spans.
 * Above 1 the objective falls as any span grows, so for a pair of x spans the y spans are the largest that the constraint
 * lets: a search over two numbers, not four.
 */
import { minimiseWhole } from './branch-and-bound.ts';
import { changeOf } from './change-of-spans.ts';
import { meanRadialMiss, reachOf, type Quadrants, type Spans } from './spans.ts';

/** Room for rounding: a reach this much under the constraint meets it. */
const SLACK = 1e-12;

/** Largest whole y span with R ≥ need for every point of a quadrant under an x span; `largest` where none binds; 0 where none fits. */
function largestYSpan(points: readonly number[], xSpan: number, need: number, largest: number): number {
  let span = largest;
  for (let i = 0; i < points.length; i += 2) {
    const dx = points[i] ?? 0;
    const dy = points[i + 1] ?? 0;
    const x = dx / xSpan;
    const left = need * need - x * x;
    if (left <= 0) continue;
    let most = Math.min(span, Math.floor(dy / Math.sqrt(left)));
    // The square root rounds; the constraint itself decides about the last count.
    if (most < span && reachOf(dx, dy, xSpan, most + 1) >= need - SLACK) most += 1;
    while (most > 0 && reachOf(dx, dy, xSpan, most) < need - SLACK) most -= 1;
    span = most;
    if (span === 0) return 0;
  }
  return span;
}

/** Null when no whole spans within the layer's limits reach far enough in every direction. */
export function solveFullReach(quadrants: Quadrants, guard: number, largest: Spans, current: Spans): Spans | null {
  const need = 1 + guard;
  const [[plusPlus, plusMinus], [minusPlus, minusMinus]] = quadrants.at;

  function ySpans(xPlus: number, xMinus: number): { yPlus: number; yMinus: number } {
    return {
      yPlus: Math.min(
        largestYSpan(plusPlus, xPlus, need, largest.yPlus),
        largestYSpan(minusPlus, xMinus, need, largest.yPlus),
      ),
      yMinus: Math.min(
        largestYSpan(plusMinus, xPlus, need, largest.yMinus),
        largestYSpan(minusMinus, xMinus, need, largest.yMinus),
      ),
    };
  }
  function spansFor(point: readonly number[]): Spans | null {
    const [xPlus = 0, xMinus = 0] = point;
    const { yPlus, yMinus } = ySpans(xPlus, xMinus);
    return yPlus < 1 || yMinus < 1 ? null : { xPlus, xMinus, yPlus, yMinus };
  }

  const found = minimiseWhole({
    low: [1, 1],
    high: [Math.floor(largest.xPlus), Math.floor(largest.xMinus)],
    guess: [current.xPlus, current.xMinus],
    value(point) {
      const spans = spansFor(point);
      return spans === null ? Infinity : meanRadialMiss(quadrants, spans);
    },
    bound([plusLow = 0, minusLow = 0], [xPlus = 0, xMinus = 0]) {
      // Small x spans allow the largest y spans; large ones give the smallest reach: together never above any value in the box.
      const { yPlus, yMinus } = ySpans(plusLow, minusLow);
      return yPlus < 1 || yMinus < 1 ? Infinity : least(quadrants, { xPlus, xMinus, yPlus, yMinus }, need);
    },
    change(point) {
      const spans = spansFor(point);
      return spans === null ? Infinity : changeOf(spans, current);
    },
  });
  return found === null ? null : spansFor(found);
}

/** Mean of max(R, need) − 1: every allowed mapping has R ≥ need. */
function least(quadrants: Quadrants, spans: Spans, need: number): number {
  let sum = 0;
  for (const [xSide, row] of quadrants.at.entries()) {
    for (const [ySide, list] of row.entries()) {
      const xSpan = xSide === 0 ? spans.xPlus : spans.xMinus;
      const ySpan = ySide === 0 ? spans.yPlus : spans.yMinus;
      for (let i = 0; i < list.length; i += 2) {
        sum += Math.max(reachOf(list[i] ?? 0, list[i + 1] ?? 0, xSpan, ySpan), need - SLACK) - 1;
      }
    }
  }
  return sum / quadrants.count;
}
