/** What a host would see behind a chain. */
import { limitAxis } from '../mapping/deflect.ts';
import type { ChainFunction } from './run-chain.ts';

/**
 * Magnitude of the output of a chain that is fed with a deflection, limited first as a pad limits it. `out` is a slot of
 * two numbers that keeps the output itself; nothing is allocated.
 */
export function outputOf(run: ChainFunction, x: number, y: number, out: Float64Array): number {
  run(limitAxis(x), limitAxis(y), out);
  const xOut = out[0] ?? 0;
  const yOut = out[1] ?? 0;
  return Math.sqrt(xOut * xOut + yOut * yOut);
}
