/** What comes out while the stick is pushed from its rest to the gate in one direction. */
import { deflect, limit } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { Pair, StickFields } from '../pad/stick.ts';
import type { ChainFunction } from '../zones/run-chain.ts';

const STEPS = 160;
const HALVINGS = 14;

/**
 * Output magnitude against push, in turn: push is the share of the way from the rest to the rim point, 0 … 1, and so
 * the same movement of the hand under every mapping. Both points are raw counts as reported. Where the output leaves or
 * falls back to nothing the step is found by halving, to 2⁻¹⁴ of a step, and drawn upright.
 */
export function responseCurve(
  mapping: StickMapping,
  fields: StickFields,
  rest: Pair,
  rim: Pair,
  run: ChainFunction,
): Float64Array {
  const out = new Float64Array(2);
  const output = (push: number): number => {
    const at = { x: rest.x + push * (rim.x - rest.x), y: rest.y + push * (rim.y - rest.y) };
    const deflection = limit(deflect(mapping, fields, at));
    run(deflection.x, deflection.y, out);
    return Math.hypot(out[0] ?? 0, out[1] ?? 0);
  };
  const points = [0, output(0)];
  for (let step = 1; step <= STEPS; step += 1) {
    const push = step / STEPS;
    const value = output(push);
    const before = points.at(-1) ?? 0;
    if ((before === 0) !== (value === 0)) {
      let low = (step - 1) / STEPS;
      let high = push;
      for (let halving = 0; halving < HALVINGS; halving += 1) {
        const middle = (low + high) / 2;
        if ((output(middle) === 0) === (before === 0)) low = middle;
        else high = middle;
      }
      points.push(low, output(low), high, output(high));
    }
    points.push(push, value);
  }
  return Float64Array.from(points);
}
