/** What a mapping would do, computed from the captured evidence alone: no write is needed to know it. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { measureRest } from '../measure/rest.ts';
import { measureRim } from '../measure/rim.ts';
import type { Prediction } from './proposal.ts';

export function predict(evidence: StickEvidence, mapping: StickMapping): Prediction {
  return { rest: measureRest(evidence, mapping), rim: measureRim(evidence, mapping) };
}
