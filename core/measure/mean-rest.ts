/** Where a stick rests. */
import type { Dwell, StickEvidence } from '../capture/evidence/evidence.ts';
import { mean } from '../numeric/mean.ts';
import type { Pair } from '../pad/stick.ts';

/**
 * The settled stretches that say where a stick rests: those after its releases, or, of a stick that nobody let go,
 * those in which it only lay still.
 */
export function settledDwells(evidence: StickEvidence): readonly Dwell[] {
  const releases = evidence.rest?.dwells ?? [];
  return releases.length > 0 ? releases : (evidence.still ?? []);
}

/** Mean of the rest points, raw counts as reported: releases, not samples, count alike. NaN without dwells. */
export function meanRest(dwells: readonly Dwell[]): Pair {
  return { x: mean(dwells.map((dwell) => dwell.point.x)), y: mean(dwells.map((dwell) => dwell.point.y)) };
}
