/** What is asked of a whole log beyond its report: proposals, zones, consumers, what changed since, where an image may hold it. */
import type { StickEvidence } from '../../../core/capture/evidence/evidence.ts';
import type { Track } from '../../../core/capture/evidence/track.ts';
import { measuredMapping } from '../../../core/mapping/measured-mapping.ts';
import type { PadMapping } from '../../../core/mapping/mapping.ts';
import { compareSurveys, type SurveyDifference } from '../../../core/measure/compare-surveys.ts';
import { STICKS, type StickId } from '../../../core/pad/stick.ts';
import { done, failed, type Problem, type Result } from '../../../core/result.ts';
import type { Chain } from '../../../core/zones/chain.ts';
import type { Consumer } from '../../../core/zones/consumer.ts';
import { answerConsumers, type ConsumersReport } from '../../../core/zones/consumers-report.ts';
import { answerTrack, type ZonesReport } from '../../../core/zones/zones-report.ts';
import { judgeLog, type Terms } from './judge-log.ts';
import { proposeFor, type StickProposal, type Wish } from './propose-for.ts';

export interface LogProposals {
  readonly sticks: Readonly<Partial<Record<StickId, StickProposal>>>;
  /** Sticks that nothing can be proposed for, and why. */
  readonly refused: readonly (readonly [StickId, Problem])[];
}

export function proposeForLog(track: Track, terms: Terms, wish: Wish): LogProposals {
  const { sticks, report } = judgeLog(track, terms);
  const proposals: Partial<Record<StickId, StickProposal>> = {};
  const refused: [StickId, Problem][] = [];
  for (const stick of STICKS) {
    const judged = sticks[stick];
    if (judged === undefined) continue;
    const proposal = proposeFor({ stick, ...judged, findings: report.findings }, wish, terms.limits);
    if (proposal.ok) proposals[stick] = proposal.value;
    else refused.push([stick, proposal.problem]);
  }
  return { sticks: proposals, refused };
}

export function zonesOfLog(track: Track, { mapping, limits }: Terms, chain: Chain): ZonesReport {
  return answerTrack(track, mapping?.sticks ?? null, chain, limits.releases.value);
}

export function consumersOfLog(
  track: Track,
  { mapping, limits }: Terms,
  consumers: readonly Consumer[],
  driver: Chain | null,
): ConsumersReport {
  return answerConsumers(track, mapping?.sticks ?? null, consumers, driver, limits.releases.value);
}

/** Of every stick that both logs have. */
export function compareTwoLogs(before: Track, after: Track, terms: Terms): (readonly [StickId, SurveyDifference[]])[] {
  const [one, other] = [judgeLog(before, terms).report, judgeLog(after, terms).report];
  return STICKS.flatMap((stick) => {
    const [a, b] = [one.sticks[stick], other.sticks[stick]];
    return a === undefined || b === undefined ? [] : [[stick, compareSurveys(a, b)] as const];
  });
}

/** The extents of the turns with the rest as centre, of every stick that has both: what an image is searched for. */
export function measuredOf(
  sticks: Readonly<Partial<Record<StickId, { readonly evidence: StickEvidence }>>>,
): Result<PadMapping> {
  const found = STICKS.flatMap((stick) => {
    const evidence = sticks[stick]?.evidence;
    const extents = evidence === undefined ? null : measuredMapping(evidence);
    return extents === null ? [] : [[stick, extents] as const];
  });
  if (found.length > 0) return done(Object.fromEntries(found));
  return failed('find-no-rim', 'The survey has no stick with a rest and a turn along its gate; take one that has.');
}
