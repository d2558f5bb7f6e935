/** What each stage of a chain leaves of a push from the rest to the gate in one direction. */
import { deflect, limit } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { Pair, StickFields } from '../pad/stick.ts';
import { signalPath } from '../zones/stage-outputs.ts';
import type { Stage } from '../zones/chain.ts';

const STEPS = 200;

export interface StageCurves {
  /** Share of the way from the rest to the rim point, 0 … 1. */
  readonly push: Float64Array;
  /** Magnitudes by push: before the first stage, then after each. */
  readonly after: readonly Float64Array[];
}

/** Both points are raw counts as reported; the chain takes the limited deflection. */
export function stageCurves(
  mapping: StickMapping,
  fields: StickFields,
  rest: Pair,
  rim: Pair,
  stages: readonly Stage[],
): StageCurves {
  const path = signalPath(stages);
  const push = Float64Array.from({ length: STEPS + 1 }, (_, step) => step / STEPS);
  const after = Array.from({ length: stages.length + 1 }, () => new Float64Array(STEPS + 1));
  push.forEach((share, step) => {
    const at = { x: rest.x + share * (rim.x - rest.x), y: rest.y + share * (rim.y - rest.y) };
    const d = limit(deflect(mapping, fields, at));
    path(d.x, d.y).forEach((value, place) => {
      const curve = after[place];
      if (curve !== undefined) curve[step] = value;
    });
  });
  return { push, after };
}
