/** Aim `edges`: per edge the median over turns of each turn's extreme, in whole counts. */
import type { Turn } from '../capture/evidence/evidence.ts';
import { median } from '../numeric/quantile.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { Pair } from '../pad/stick.ts';

/** The mapping may have edges that cross the centre when the turns did not go round it: the caller checks it. */
export function edgesMapping(turns: readonly Turn[], centre: Pair): StickMapping {
  const edge = (pick: (turn: Turn) => number): number => Math.round(median(turns.map(pick)));
  return {
    x: { min: edge((turn) => turn.extremes.xMin), centre: centre.x, max: edge((turn) => turn.extremes.xMax) },
    y: { min: edge((turn) => turn.extremes.yMin), centre: centre.y, max: edge((turn) => turn.extremes.yMax) },
  };
}
