/** From the captured evidence of one stick to a mapping, its reasons and what it will do. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { done, failed, type Result } from '../result.ts';
import { centreUncertainty } from './centre-uncertainty.ts';
import { chooseCentre } from './choose-centre.ts';
import { edgeUncertainty } from './edge-uncertainty.ts';
import { guardOf } from './guard.ts';
import { predict } from './predict.ts';
import type { Proposal, ProposalWish } from './proposal.ts';
import { reasonsFor } from './reasons.ts';
import { solveMapping } from './solve.ts';

/** Refused by name when the captures do not carry the aim; nothing is guessed. */
export function propose(evidence: StickEvidence, wish: ProposalWish): Result<Proposal> {
  const dwells = evidence.rest?.dwells ?? [];
  if (dwells.length === 0) {
    return failed('proposal-no-rest', 'The log holds no settled release of this stick: capture its rest first.');
  }
  if (evidence.rim === null) {
    return failed('proposal-no-rim', 'The log holds no turn of this stick along its gate: capture its rim first.');
  }
  const centre = chooseCentre(dwells, wish.centreBy, wish.current);
  if (centre === null) {
    return failed(
      'proposal-no-centre',
      'The rest lies outside the edges of the current mapping, so no centre between them can be steadiest: ask for the mean instead.',
    );
  }
  const guarded = { ...wish, guard: guardOf(evidence, centre, wish) };
  const solved = solveMapping(evidence, centre, guarded);
  if (!solved.ok) return solved;
  const mapping = solved.value;
  return done({
    mapping,
    aim: wish.aim,
    centreBy: wish.centreBy,
    guard: guarded.guard,
    predicted: predict(evidence, mapping),
    current: predict(evidence, wish.current),
    reasons: reasonsFor({
      evidence,
      mapping,
      wish: guarded,
      centre: centreUncertainty(dwells, wish.centreBy, wish.current, wish.seed),
      edges: edgeUncertainty(evidence, centre, guarded),
    }),
  });
}
