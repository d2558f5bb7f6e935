/** How far a proposal moves the edges: what decides between equally good ones. */
import type { Spans } from './spans.ts';

/** Counts by which the four edges move from the current mapping. */
export function changeOf(spans: Spans, current: Spans): number {
  return (
    Math.abs(spans.xPlus - current.xPlus) +
    Math.abs(spans.xMinus - current.xMinus) +
    Math.abs(spans.yPlus - current.yPlus) +
    Math.abs(spans.yMinus - current.yMinus)
  );
}
