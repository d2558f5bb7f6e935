/** What a survey of one stick lacks, said in place. */
import { LEAST_RELEASES } from '../../core/capture/evidence/least-releases.ts';
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import { coverageStretches, stretchName } from '../../core/plot/coverage-stretches.ts';
import type { RimMeasure } from '../../core/measure/rim-measure.ts';

/**
 * Plain sentences, the weightiest first; empty where nothing is missing. What the capture itself says of a missing rest
 * or rim, or of a rest that moved, stands as it is; only where it says nothing do the views' own words stand.
 */
export function missingSentences(evidence: StickEvidence): string[] {
  const releases = evidence.rest?.dwells.length ?? 0;
  const needed = evidence.releasesNeeded ?? LEAST_RELEASES;
  const turns = evidence.rim?.turns ?? [];
  const said = (evidence.lacks ?? []).map(({ says }) => says);
  const sentences = [...said];
  if (evidence.rim === null) {
    if (said.length === 0)
      sentences.push('No turn along the gate was captured: reach, edges and a proposal need one. Survey the rim.');
  } else if (!turns.some((turn) => turn.way === 'clockwise') || !turns.some((turn) => turn.way === 'counterClockwise'))
    sentences.push('The gate was turned one way only, so no direction is covered. Turn the other way as well.');
  if (releases === 0) {
    if (said.length === 0)
      sentences.push('No release was captured: offset, leaks and onset need a rest. Survey the rest.');
  } else if (releases === 1)
    sentences.push('One release only: there is a rest point, but no scatter and no uncertainty. Release 24 times.');
  else if (releases < needed)
    sentences.push(
      `${releases} releases only: statements about the rest need ${needed} at least, better ${Math.max(24, 2 * needed)}.`,
    );
  if (evidence.captures === 'inferred')
    sentences.push('The log holds no capture marks: releases and turns were inferred from the movement.');
  return sentences;
}

/** `not covered: 265–280°`, or empty. */
export function uncoveredText(rim: RimMeasure | null): string {
  if (rim === null) return '';
  const states = rim.directions.map((direction) => direction.state);
  const names = (['none', 'thin'] as const).map((state) =>
    coverageStretches(states, state).map(stretchName).join(', '),
  );
  return [
    names[0] === '' ? '' : `not covered: ${names[0] ?? ''}`,
    names[1] === '' ? '' : `few turns: ${names[1] ?? ''}`,
  ]
    .filter((part) => part !== '')
    .join(' · ');
}
