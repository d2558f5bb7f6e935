/** How often chance alone would find a place that fits as well, told by the very image that is searched. */
import type { PadMapping } from '../mapping/mapping.ts';
import { createRandom } from '../numeric/random.ts';
import { finderLayouts } from './finder-codecs.ts';
import { gridOf } from './finder-targets.ts';
import { LeastExpected } from './least-expected.ts';
import type { MeasuredPlace } from './measured-places.ts';
import { TWIN_WITHIN } from './near-stick.ts';
import type { NumberShares } from './number-shares.ts';
import { otherNumbers, type OtherNumbers } from './other-numbers.ts';
import { scanImage } from './scan-image.ts';

/** Sets of other numbers that are looked for: some of a promising place, and all of one that still is. */
const FIRST_OTHERS = 60;
const ALL_OTHERS = 600;
const SEED = 1;
/** Only below this chance are others looked for, and all of them only while so few of the first fit as well. */
const PROMISING = 0.05;
const FEW = 1;
/** Numbers so many times as far from the measured ones as the place is are others, and not the measured ones again. */
const APART = 2;
/** A place that is so many times more to be expected than the best one is not worth the look at all others. */
const WORSE = 1e4;
/** Of a pair no stick may be so many times likelier than the mean of both: the other alone would be the find. */
const UNEVEN = 10;

/**
 * The larger of two chances, in the order of the places.
 *
 * First what is expected of the place, over all forms that are tried: how many such places there would be if each number hung on the
 * one before it alone, as it does in the whole image, or if the place were made of what stands around it. Evenly filled memory and
 * repeating memory are both judged by what they are.
 *
 * Then, where that is small, the share of other numbers of the same kind that find a place in this image which is as little to be
 * expected. Whatever the image is made of, it was so for them too. They are drawn by a fixed seed, so that a search gives the same
 * chance every time, and the best place counts among them: of n others none is one in n + 1.
 */
export function chancesOf(places: readonly MeasuredPlace[], measured: PadMapping, shares: NumberShares): number[] {
  const forms = 2 * finderLayouts.length * Object.keys(measured).length;
  const alone = places.map(({ expected }) => Math.min(1, forms * expected));
  const promising = places.filter((_, index) => (alone[index] ?? 1) < PROMISING);
  if (promising.length === 0) return alone;
  const tallies = tallyOthers(promising, measured, shares, PROMISING / forms);
  return places.map((place, index) => {
    const tally = tallies.get(place);
    const share = tally === undefined ? 0 : (tally.asGood + 1) / (tally.of + 1);
    return Math.max(alone[index] ?? 1, share);
  });
}

interface Tally {
  readonly asGood: number;
  readonly of: number;
}

function tallyOthers(
  places: readonly MeasuredPlace[],
  measured: PadMapping,
  shares: NumberShares,
  most: number,
): ReadonlyMap<MeasuredPlace, Tally> {
  const others = otherNumbers(measured, ALL_OTHERS, createRandom(SEED));
  const [some, rest] = [others.slice(0, FIRST_OTHERS), others.slice(FIRST_OTHERS)];
  const first = leastOf(some, measured, shares, most);
  const tallies = new Map(places.map((place) => [place, count(place, some, first)]));
  const isFew = (place: MeasuredPlace): boolean => (tallies.get(place)?.asGood ?? 0) <= FEW;
  const few = places.filter(isFew);
  if (few.length === 0) return tallies;
  const least = Math.min(...few.map(({ expected }) => expected));
  const open = few.filter(({ expected }) => expected <= WORSE * least);
  const all = leastOf(rest, measured, shares, Math.max(...open.map(({ expected }) => expected)));
  for (const place of open) {
    const [before, more] = [tallies.get(place) ?? { asGood: 0, of: 0 }, count(place, rest, all)];
    tallies.set(place, { asGood: before.asGood + more.asGood, of: before.of + more.of });
  }
  return tallies;
}

/** For each of the sets the least that is expected of one of its places, and infinite where that is more than `most`. */
function leastOf(
  others: readonly OtherNumbers[],
  measured: PadMapping,
  shares: NumberShares,
  most: number,
): readonly number[] {
  const grid = gridOf([measured, ...others.map(({ numbers }) => numbers)]);
  const least = new LeastExpected(others.length + 1, shares.image.length, most);
  scanImage(grid, shares, mostShare(most, shares.image.length), (near) => {
    if (near.sought.set > 0) least.take(near);
  });
  return [...least.least.slice(1)];
}

/** What a stick may fit by at any one byte and still be expected so little, alone or in a pair. */
function mostShare(most: number, bytes: number): number {
  return Math.max(most / bytes, UNEVEN * Math.sqrt(most / bytes / (2 * TWIN_WITHIN)));
}

function count({ sticks, expected }: MeasuredPlace, others: readonly OtherNumbers[], least: readonly number[]): Tally {
  const furthest = Math.max(...sticks.map((stick) => stick.furthest));
  const apart = others.flatMap(({ away }, index) => (away >= APART * furthest ? [least[index] ?? 0] : []));
  return { asGood: apart.filter((one) => one <= expected).length, of: apart.length };
}
