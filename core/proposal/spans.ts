/** The unknowns of a proposal: four spans in counts from the chosen centre, y up, and the rim points they must fit. */
import type { AxisMapping, StickMapping } from '../mapping/mapping.ts';
import type { Pair, StickFields } from '../pad/stick.ts';
import type { LayerLimits } from '../mapping/layer-limits.ts';

export interface Spans {
  readonly xPlus: number;
  readonly xMinus: number;
  readonly yPlus: number;
  readonly yMinus: number;
}

/** xPlus, xMinus, yPlus, yMinus, the order that searches use. */
export function spansToArray(spans: Spans): number[] {
  return [spans.xPlus, spans.xMinus, spans.yPlus, spans.yMinus];
}

export function spansFromArray(values: readonly number[]): Spans {
  const [xPlus = 0, xMinus = 0, yPlus = 0, yMinus = 0] = values;
  return { xPlus, xMinus, yPlus, yMinus };
}

/** Rim points from the centre, split by the pair of spans that they meet; `side` 0 plus, 1 minus. */
export interface Quadrants {
  /** `at[xSide][ySide]` lists |dx|, |dy| in turn. */
  readonly at: readonly [
    readonly [readonly number[], readonly number[]],
    readonly [readonly number[], readonly number[]],
  ];
  readonly count: number;
}

/** Sorts points (counts from the centre, y up) into the quadrants; a point on an axis meets only the other axis's span. */
export function sortIntoQuadrants(points: readonly Pair[]): Quadrants {
  const at: [[number[], number[]], [number[], number[]]] = [
    [[], []],
    [[], []],
  ];
  for (const point of points) {
    at[point.x >= 0 ? 0 : 1][point.y >= 0 ? 0 : 1].push(Math.abs(point.x), Math.abs(point.y));
  }
  return { at, count: points.length };
}

/** Magnitude of the free deflection of a point under two spans. */
export function reachOf(dx: number, dy: number, xSpan: number, ySpan: number): number {
  const x = dx / xSpan;
  const y = dy / ySpan;
  return Math.sqrt(x * x + y * y);
}

/** Mean of |R − 1| over all points: the objective of `full-reach` and `even`. */
export function meanRadialMiss(quadrants: Quadrants, spans: Spans): number {
  let sum = 0;
  for (const [xSide, row] of quadrants.at.entries()) {
    for (const [ySide, list] of row.entries()) {
      const xSpan = xSide === 0 ? spans.xPlus : spans.xMinus;
      const ySpan = ySide === 0 ? spans.yPlus : spans.yMinus;
      for (let i = 0; i < list.length; i += 2)
        sum += Math.abs(reachOf(list[i] ?? 0, list[i + 1] ?? 0, xSpan, ySpan) - 1);
    }
  }
  return sum / quadrants.count;
}

/** The mapping whose spans from the centre are these; a y-up span is toward the minimum where the count grows downwards. */
export function mappingFromSpans(centre: Pair, spans: Spans, fields: StickFields): StickMapping {
  return {
    x: axisFromSpans(centre.x, spans.xPlus, spans.xMinus, fields.x.up),
    y: axisFromSpans(centre.y, spans.yPlus, spans.yMinus, fields.y.up),
  };
}

function axisFromSpans(centre: number, plus: number, minus: number, up: 1 | -1): AxisMapping {
  return up === 1
    ? { min: centre - minus, centre, max: centre + plus }
    : { min: centre - plus, centre, max: centre + minus };
}

/** The inverse of `mappingFromSpans`. */
export function spansOfMapping(mapping: StickMapping, fields: StickFields): Spans {
  const x = spansOfAxis(mapping.x, fields.x.up);
  const y = spansOfAxis(mapping.y, fields.y.up);
  return { xPlus: x.plus, xMinus: x.minus, yPlus: y.plus, yMinus: y.minus };
}

function spansOfAxis(axis: AxisMapping, up: 1 | -1): { plus: number; minus: number } {
  const above = axis.max - axis.centre;
  const below = axis.centre - axis.min;
  return up === 1 ? { plus: above, minus: below } : { plus: below, minus: above };
}

/** Largest span each way that the target layer can hold. */
export function largestSpans(centre: Pair, fields: StickFields, limits: LayerLimits): Spans {
  return spansOfMapping(
    {
      x: { min: limits.least, centre: centre.x, max: limits.greatest },
      y: { min: limits.least, centre: centre.y, max: limits.greatest },
    },
    fields,
  );
}
