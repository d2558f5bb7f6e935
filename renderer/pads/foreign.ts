/** Whether what is shown is of another pad than the one in hand. */
import { kinshipOf, type PadOwner } from '../../core/pad/owner.ts';
import { wholePadName, type OfPad } from '../../core/pad/pad-name.ts';

export interface Foreign {
  readonly says: 'other pad' | 'maybe other pad';
  /** Where there is little room. */
  readonly brief: 'other pad' | 'other pad?';
  readonly title: string;
}

/** Null where it is of the pad in hand, or no pad is in hand: then nothing is foreign. */
export function foreignTo(inHand: PadOwner | null, of: OfPad): Foreign | null {
  if (inHand === null) return null;
  const kinship = kinshipOf(of.pad, inHand);
  if (kinship === 'same') return null;
  const name = wholePadName(of);
  return kinship === 'other'
    ? { says: 'other pad', brief: 'other pad', title: `Of another pad than the one in hand: ${name}.` }
    : {
        says: 'maybe other pad',
        brief: 'other pad?',
        title: `May be of another pad than the one in hand; nothing known of both tells them apart: ${name}.`,
      };
}
