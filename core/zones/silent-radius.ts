/** Up to where a chain is known to stay silent without asking it at every point. */
import type { Chain, Stage } from './chain.ts';
import { outputOf } from './output.ts';
import type { ChainFunction } from './run-chain.ts';

/** The zones judge a limited magnitude that is rounded: a point this near the edge is left to the chain itself. */
const ROUNDING = 1e-9;

/**
 * A radius within which every deflection comes out as 0: the inner edge of the first stage where that is a zone and what follows
 * makes nothing of nothing; −1 where nothing is known. The chain may stay silent further out.
 */
export function silentRadius(run: ChainFunction, stages: Chain['stages']): number {
  if (outputOf(run, 0, 0, new Float64Array(2)) > 0) return -1;
  const first = stages.find((stage) => stage.off !== true);
  return first === undefined ? -1 : innerOf(first) - ROUNDING;
}

/** The square of an axial zone and the widening cross of a sloped one hold the disc; sectors blend between their edges. */
function innerOf(stage: Stage): number {
  if (!('zone' in stage)) return -1;
  return stage.zone === 'sector' ? Math.min(...stage.sectors.map(({ inner }) => inner)) : stage.inner;
}
