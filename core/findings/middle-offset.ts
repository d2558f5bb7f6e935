/** How far the rest stands from the middle of the range. */
import { rangeMapping } from '../mapping/range-mapping.ts';
import type { Subject } from './subject.ts';

export interface Offset {
  /** Shares of the half travel, y up. */
  readonly x: number;
  readonly y: number;
  readonly magnitude: number;
  readonly u95: number | null;
}

/** Null without a rest. Of a stick that nobody let go, which only lay still, the uncertainty is null. */
export function middleOffset({ report, fields, half }: Subject): Offset | null {
  const { rest } = report;
  if (rest === null) return null;
  const middle = rangeMapping(fields);
  const x = (fields.x.up * (rest.point.x - middle.x.centre)) / half.x;
  const y = (fields.y.up * (rest.point.y - middle.y.centre)) / half.y;
  const u95 = rest.u95.x === null || rest.u95.y === null ? null : Math.hypot(rest.u95.x / half.x, rest.u95.y / half.y);
  return { x, y, magnitude: Math.hypot(x, y), u95 };
}
