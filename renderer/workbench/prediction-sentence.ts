/** What the proposal will do, in one sentence. */
import { percent } from '../../core/plot/number-text.ts';
import { directionText } from '../frame/direction-words.ts';
import type { Standing } from '../stick/standing.ts';
import type { ProposalReply } from '../stick/proposals.svelte.ts';

export function predictionSentence(proposal: ProposalReply, standings: readonly Standing[]): string {
  const rim = standings.find(({ tone }) => tone === 'proposed')?.rim ?? null;
  if (rim === null || rim.leastReach === null || rim.fullReachShare === null || rim.meanRadialError === null)
    return 'Without covered directions nothing can be predicted.';
  const covered = rim.directions.filter((direction) => direction.covered).length;
  const full = Math.round(rim.fullReachShare * covered);
  const guard = proposal.aim === 'full-reach' ? ` with a guard of ${percent(proposal.guard)}` : '';
  const reach =
    full === covered
      ? `Predicted${guard}: full output in all ${covered} covered directions`
      : `Predicted: full output in ${full} of ${covered} covered directions`;
  const least = `least reach ${rim.leastReach.value.toFixed(3)} at ${directionText(rim.leastReach.angle)}`;
  return `${reach}, ${least}, mean radial error ${percent(rim.meanRadialError)}.`;
}
