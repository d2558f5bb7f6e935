/** Whose the mappings are that were kept under a name, each marked where that is another pad than the one in hand. */
import type { PadOwner } from '../../core/pad/owner.ts';
import type { OfPad } from '../../core/pad/pad-name.ts';
import { foreignTo } from './foreign.ts';
import { padNames } from './pad-name.ts';

/** In the order of the list. */
export function keptNames(kept: readonly OfPad[], inHand: PadOwner | null): { says: string; title: string }[] {
  const names = padNames(kept);
  return kept.map((one, index) => {
    const foreign = foreignTo(inHand, one);
    const says = names[index]?.says ?? one.product;
    return {
      says: foreign === null ? says : `${says} (${foreign.says})`,
      title: foreign?.title ?? names[index]?.title ?? one.product,
    };
  });
}
