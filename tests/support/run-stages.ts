/** Runs stages, written as a chain file writes them, on one vector. */
import type { Pair } from '../../core/pad/stick.ts';
import type { Stage } from '../../core/zones/chain.ts';
import { compileChain } from '../../core/zones/run-chain.ts';

export function runStages(stages: readonly Stage[], x: number, y: number): Pair {
  const out = new Float64Array(2);
  compileChain({ stages })(x, y, out);
  return { x: out[0]!, y: out[1]! };
}
