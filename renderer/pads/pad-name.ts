/** Pads by name in the lists of the screen: product and what tells it from its like, short enough for the place. */
import { ownerOf } from '../../core/pad/owner.ts';
import { padMarks, wholePadName, type OfPad } from '../../core/pad/pad-name.ts';
import { shortenMiddle } from '../kit/words/shorten-middle.ts';
import type { PadSummary } from './pad-words.ts';

/** What a list shows of a pad, and the whole of it for the title. */
export interface PadName {
  readonly product: string;
  /** Serial number, unit, or a number in this list; its middle left out where it is long. */
  readonly mark: string;
  /** Both in one line. */
  readonly says: string;
  readonly title: string;
}

/** Letters of a serial number that a list shows. */
const MARK_LETTERS = 20;

/** One that stands alone, e.g. in a head. */
export function padName(of: OfPad, letters = MARK_LETTERS): PadName {
  return nameWith(of, padMarks([of])[0] ?? '', letters);
}

/** Things that are of pads, e.g. surveys, in their order. */
export function padNames(list: readonly OfPad[], letters = MARK_LETTERS): readonly PadName[] {
  const marks = padMarks(list);
  return list.map((of, index) => nameWith(of, marks[index] ?? '', letters));
}

/** The pads that there are, in their order: each is another one. */
export function listedNames(list: readonly PadSummary[], letters = MARK_LETTERS): readonly PadName[] {
  const ofPads = list.map(ofSummary);
  const marks = padMarks(ofPads, 'pads');
  return ofPads.map((of, index) => nameWith(of, marks[index] ?? '', letters));
}

/** Of a pad that is listed, by its handle; null where it is not there. */
export function nameOf(list: readonly PadSummary[], pad: string): PadName | null {
  return listedNames(list)[list.findIndex((one) => one.pad === pad)] ?? null;
}

export function ofSummary({ identity, unit }: Pick<PadSummary, 'identity' | 'unit'>): OfPad {
  return { product: identity.product, pad: ownerOf(identity, unit) };
}

function nameWith(of: OfPad, whole: string, letters: number): PadName {
  const mark = shortenMiddle(whole, letters);
  return { product: of.product, mark, says: `${of.product} · ${mark}`, title: `${wholePadName(of)}${numberOf(whole)}` };
}

/** A number in the list stands in the title too. */
function numberOf(mark: string): string {
  return /, \d+\w\w$/u.exec(mark)?.[0] ?? '';
}
