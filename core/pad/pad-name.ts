/** What a pad's name is followed by wherever pads, or what is of a pad, are listed: two of a kind must be told apart. */
import { tellingSerial, sayOwner, type PadOwner } from './owner.ts';

/** Something that is a pad or of one; null where whose it is was not kept. */
export interface OfPad {
  readonly product: string;
  readonly pad: PadOwner | null;
}

/** Its serial number, else the unit that its memory tells, else null. */
export function padMark(pad: PadOwner | null): string | null {
  if (pad === null) return null;
  return tellingSerial(pad.serial) ?? (pad.unit === null ? null : `unit ${pad.unit}`);
}

/**
 * The marks of a list, in its order. What has none is numbered in this list, e.g. `no serial number, 2nd`. With `areAll`
 * pads, each entry is a pad of its own: those with the same serial number are numbered too.
 */
export function padMarks(list: readonly OfPad[], areAll: 'pads' | 'of pads' = 'of pads'): readonly string[] {
  const plain = list.map(({ pad }) => padMark(pad) ?? (pad === null ? 'pad not known' : 'no serial number'));
  const keys = list.map(({ product, pad }, index) =>
    JSON.stringify([product, pad?.vendorId, pad?.productId, plain[index]]),
  );
  return plain.map((mark, index) => {
    const isTold = padMark(list[index]?.pad ?? null) !== null && areAll === 'of pads';
    const alike = keys.filter((key) => key === keys[index]).length;
    if (isTold || alike === 1) return mark;
    return `${mark}, ${ordinal(keys.slice(0, index + 1).filter((key) => key === keys[index]).length)}`;
  });
}

/** For the ear too: `Bench pad, serial number healthy-1`. */
export function sayPad({ product, pad }: OfPad): string {
  const serial = pad === null ? null : tellingSerial(pad.serial);
  return `${product}, ${serial === null ? (padMark(pad) ?? 'no serial number') : `serial number ${serial}`}`;
}

/** The whole of it, e.g. for a title: `Bench pad, 1209:000a, serial number healthy-1`. */
export function wholePadName({ product, pad }: OfPad): string {
  return pad === null ? `${product}, pad not known` : `${product}, ${sayOwner(pad)}`;
}

function ordinal(count: number): string {
  const last = count % 10;
  const isTeen = count % 100 > 10 && count % 100 < 14;
  return `${String(count)}${isTeen ? 'th' : last === 1 ? 'st' : last === 2 ? 'nd' : last === 3 ? 'rd' : 'th'}`;
}
