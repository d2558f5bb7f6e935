/** Chains in the words of the screen. */
import type { Chain } from '../../core/zones/chain.ts';
import { kindOf } from '../stick/stage-kinds.ts';

/** The stages in force in one line, in their order. */
export function chainLine({ stages }: Pick<Chain, 'stages'>): string {
  const active = stages.filter((stage) => stage.off !== true).map((stage) => kindOf(stage).says);
  const off = stages.length - active.length;
  const line = active.length === 0 ? 'no stage: the pad as it is' : active.join(' → ');
  return off === 0 ? line : `${line} (${off} switched off)`;
}
