/** The six numbers that a layout should hold, and how often they stand at a byte of an image by chance. */
import type { Layout, LayoutNumber } from './finder-layouts.ts';
import type { Sought } from './finder-targets.ts';
import type { NumberShares } from './number-shares.ts';

/** The number that a layout should hold where it reads one. */
export function soughtNumber({ edges }: Layout, { axis, part }: LayoutNumber, { first, second }: Sought): number {
  const sought = axis === 0 ? first : second;
  return part === 'centre' ? sought.centre : (edges ? sought.edges : sought.spans)[part];
}

/** Chance that all six numbers are at most `off` away: the first by itself, each further one after the one before it. */
export function shareOf(layout: Layout, sought: Sought, off: number, shares: NumberShares): number {
  let [chance, before] = [1, 0];
  for (const [index, number] of layout.numbers.entries()) {
    const wanted = soughtNumber(layout, number, sought);
    const last = layout.numbers[index - 1];
    chance *=
      last === undefined
        ? shares.share(number.lane, wanted - off, wanted + off)
        : shares.shareAfter(last.lane, [before - off, before + off], [wanted - off, wanted + off]);
    before = wanted;
  }
  return chance;
}
