/** A chain → one function from a deflection to what comes out of it. */
import type { Chain } from './chain.ts';
import { compileStage } from './compile-stage.ts';

/** Writes the output to `out` (x at 0, y at 1); nothing is allocated. */
export type ChainFunction = (x: number, y: number, out: Float64Array) => void;

/** Runs the stages in their order, those switched off left out. A chain takes limited deflections. */
export function compileChain(chain: Pick<Chain, 'stages'>): ChainFunction {
  const steps = chain.stages.filter((stage) => stage.off !== true).map(compileStage);
  return (x, y, out) => {
    out[0] = x;
    out[1] = y;
    for (const step of steps) step(out);
  };
}
