/** The mean rest point of a stick. */
import type { Dwell } from '../capture/evidence.ts';
import { mean } from '../numeric/mean.ts';
import type { Pair } from '../pad/stick.ts';

/** Mean of the rest points, raw counts as reported: releases, not samples, count alike. NaN without dwells. */
export function meanRest(dwells: readonly Dwell[]): Pair {
  return { x: mean(dwells.map((dwell) => dwell.point.x)), y: mean(dwells.map((dwell) => dwell.point.y)) };
}
