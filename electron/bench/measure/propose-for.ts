/** A proposal for one judged stick; every shell asks here, so that all propose alike and say what the numbers would only hide. */
import type { StickEvidence } from '../../../core/capture/evidence/evidence.ts';
import type { Finding } from '../../../core/findings/finding.ts';
import { hiddenFault } from '../../../core/findings/hidden-fault.ts';
import type { Limits } from '../../../core/findings/limits.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import type { StickId } from '../../../core/pad/stick.ts';
import { propose } from '../../../core/proposal/propose.ts';
import type { Proposal, ProposalWish } from '../../../core/proposal/proposal.ts';
import { done, type Result } from '../../../core/result.ts';

/** A stick as it was judged. */
export interface AskedStick {
  readonly stick: StickId;
  readonly evidence: StickEvidence;
  readonly current: StickMapping;
  readonly findings: readonly Finding[];
}

export type Wish = Pick<ProposalWish, 'aim' | 'centreBy' | 'guard'>;

export interface StickProposal extends Proposal {
  /** What new numbers would only hide, in one sentence; null where there is nothing. */
  readonly hides: string | null;
}

/** The bootstrap is drawn alike every time. */
const SEED = 1;

export function proposeFor(asked: AskedStick, wish: Wish, limits: Limits): Result<StickProposal> {
  const { x, y } = asked.evidence.fields;
  const proposal = propose(asked.evidence, {
    ...wish,
    widestGap: limits.uncovered.value,
    current: asked.current,
    // Nothing is stored from here: a mapping for the host alone may use the whole range that both fields share.
    limits: { whole: true, least: Math.min(x.minimum, y.minimum), greatest: Math.max(x.maximum, y.maximum) },
    seed: SEED,
  });
  return proposal.ok ? done({ ...proposal.value, hides: hiddenFault(asked.findings, asked.stick) }) : proposal;
}
