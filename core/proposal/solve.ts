/** One solution of one aim: from a centre and evidence to a mapping, without reasons and predictions. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { checkMapping } from '../mapping/check-mapping.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { Pair } from '../pad/stick.ts';
import { done, failed, type Result } from '../result.ts';
import { edgesMapping } from './edges.ts';
import { solveEven } from './even.ts';
import { solveFullReach } from './full-reach.ts';
import type { ProposalWish } from './proposal.ts';
import { checkCoverage, coveredRimPoints, fromCentre } from './rim-points.ts';
import { largestSpans, mappingFromSpans, sortIntoQuadrants, spansOfMapping } from './spans.ts';

/** `even` promises nothing for a direction, but a whole quarter unseen would leave a span without evidence. Degrees. */
export const WIDEST_GAP = 85;

export function solveMapping(evidence: StickEvidence, centre: Pair, wish: ProposalWish): Result<StickMapping> {
  const solved = wish.aim === 'edges' ? solveEdges(evidence, centre) : solveForReach(evidence, centre, wish);
  if (!solved.ok) return solved;
  const problem = checkMapping(solved.value, wish.limits);
  return problem === null ? solved : { ok: false, problem };
}

function solveEdges(evidence: StickEvidence, centre: Pair): Result<StickMapping> {
  const turns = evidence.rim?.turns ?? [];
  if (turns.length === 0)
    return failed('proposal-no-turn', 'The log holds no whole turn along the gate: capture the rim first.');
  return done(edgesMapping(turns, centre));
}

function solveForReach(evidence: StickEvidence, centre: Pair, wish: ProposalWish): Result<StickMapping> {
  const rim = coveredRimPoints(evidence);
  const covered = checkCoverage(
    rim,
    wish.aim === 'full-reach' ? Math.min(wish.widestGap, WIDEST_GAP) : WIDEST_GAP,
    wish.aim,
  );
  if (!covered.ok) return covered;
  const quadrants = sortIntoQuadrants(rim.map((point) => fromCentre(point.u, centre, evidence)));
  const largest = largestSpans(centre, evidence.fields, wish.limits);
  const current = spansOfMapping(wish.current, evidence.fields);
  const spans =
    wish.aim === 'full-reach'
      ? solveFullReach(quadrants, wish.guard, largest, current)
      : solveEven(quadrants, largest, current);
  if (spans === null) {
    return failed(
      'proposal-impossible',
      'No mapping that this pad can store reaches full output in every covered direction: check that the stick moved all the way round.',
    );
  }
  return done(mappingFromSpans(centre, spans, evidence.fields));
}
