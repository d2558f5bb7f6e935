/** How a stick stands under one mapping: everything the views of the Workbench compare. */
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import type { RestMeasure } from '../../core/measure/rest-measure.ts';
import type { RimMeasure } from '../../core/measure/rim-measure.ts';
import type { Tone } from '../../core/plot/figure.ts';
import { predict } from '../../core/proposal/predict.ts';
import { answerUnder } from '../../core/zones/answer-chain.ts';
import type { Chain, ZoneAnswer } from '../../core/zones/chain.ts';
import { stickUnder, type StickUnder } from '../../core/zones/stick-under.ts';

/** A mapping that is compared, with its place in the legend. */
export interface Candidate {
  readonly tone: Tone;
  readonly mapping: StickMapping;
}

export interface Measured extends Candidate {
  readonly rest: RestMeasure | null;
  readonly rim: RimMeasure | null;
  /** As every chain meets it. */
  readonly under: StickUnder;
}

export interface Standing extends Measured {
  readonly zones: ZoneAnswer;
}

/** Rest and rim under the candidate; apart from the zones, because moving a zone changes nothing of it. */
export function measureUnder(evidence: StickEvidence, candidate: Candidate): Measured {
  const { mapping } = candidate;
  const predicted = predict(evidence, mapping);
  return { ...candidate, ...predicted, under: stickUnder(evidence, mapping, predicted.rest?.toleranceRadius ?? null) };
}

export function withZones(measured: Measured, chain: Chain): Standing {
  return { ...measured, zones: answerUnder(measured.under, chain) };
}
