/** The guard that is used: how much more than full output a proposal must reach. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { checkMapping } from '../mapping/check-mapping.ts';
import { measureRim } from '../measure/rim.ts';
import type { Pair } from '../pad/stick.ts';
import { edgesMapping } from './edges.ts';
import type { ProposalWish } from './proposal.ts';

/**
 * The larger of the set value and twice the pooled spread of the reach over turns. The spread is a fraction of full output,
 * so it is judged under the `edges` mapping, where full output is the gate, and not under a current mapping that may be
 * far too wide and would make it look small.
 */
export function guardOf(evidence: StickEvidence, centre: Pair, wish: ProposalWish): number {
  const turns = evidence.rim?.turns ?? [];
  if (turns.length === 0) return wish.guard;
  const edges = edgesMapping(turns, centre);
  const rim = measureRim(evidence, checkMapping(edges) === null ? edges : wish.current);
  return Math.max(wish.guard, 2 * (rim?.pooledSpread ?? 0));
}
