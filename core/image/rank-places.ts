/** Ranks what the finder found: a place with a twin at its side, or again in another layer, comes first. */
import type { StickMapping } from '../mapping/mapping.ts';
import { STICKS, type StickId } from '../pad/stick.ts';
import { findCalibration, type CalibrationHit } from './find-calibration.ts';
import { lengthOf, type StickCodec } from './stick-codec.ts';

export interface FoundPlace {
  readonly sticks: Readonly<Partial<Record<StickId, CalibrationHit>>>;
  /** Bytes from the left stick to the right one; null for a single stick. */
  readonly distance: number | null;
  /** Offsets of the other places with the same codecs: another layer. */
  readonly again: readonly number[];
  /** How many places like this chance alone would give in an image of these bytes. */
  readonly expected: number;
}

/** Two sticks of one layer stand this near, bytes. */
const TWIN_WITHIN = 64;
const MOST_PLACES = 100;
/** Only a place that chance alone hardly gives speaks for another. */
const WORTH = 0.1;

/**
 * From the least likely to be chance on. A place where both sticks stand side by side multiplies their chances; one that
 * stands again elsewhere with the same codecs multiplies those too.
 */
export function findPlaces(
  image: Uint8Array,
  measured: Readonly<Partial<Record<StickId, StickMapping>>>,
): FoundPlace[] {
  const hits = STICKS.flatMap((stick) => {
    const wanted = measured[stick];
    return wanted === undefined ? [] : [findCalibration(image, stick, wanted)];
  });
  const [left = [], right = []] = hits;
  const pairs = hits.length < 2 ? [] : pairUp(left, right, image.length);
  const paired = new Set(pairs.flatMap(({ sticks }) => Object.values(sticks)));
  const singles = hits
    .flat()
    .filter((hit) => !paired.has(hit))
    .map(single);
  return [...withTwins(pairs), ...withTwins(singles)].sort((a, b) => a.expected - b.expected).slice(0, MOST_PLACES);
}

function single(hit: CalibrationHit): FoundPlace {
  return { sticks: { [hit.stick]: hit }, distance: null, again: [], expected: hit.expected };
}

function pairUp(left: readonly CalibrationHit[], right: readonly CalibrationHit[], size: number): FoundPlace[] {
  const byOffset = right.toSorted((a, b) => a.offset - b.offset);
  return left.flatMap((one) => {
    const from = firstFrom(byOffset, one.offset - TWIN_WITHIN);
    const pairs: FoundPlace[] = [];
    for (let index = from; index < byOffset.length; index += 1) {
      const other = byOffset[index];
      if (other === undefined || other.offset > one.offset + TWIN_WITHIN) break;
      if (!isKin(one.codec, other.codec) || isOver(one, other)) continue;
      // The other stick may stand at any of the near places: so many chances per place, not the whole image.
      const expected = one.expected * Math.min(1, (other.expected / size) * 2 * TWIN_WITHIN);
      pairs.push({ sticks: { left: one, right: other }, distance: other.offset - one.offset, again: [], expected });
    }
    return pairs;
  });
}

function firstFrom(sorted: readonly CalibrationHit[], offset: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle]?.offset ?? 0) < offset) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Both packed, in whatever order, or the same words. */
function isKin(a: StickCodec, b: StickCodec): boolean {
  if (a.form === 'packed12' || b.form === 'packed12') return a.form === b.form;
  return a.bits === b.bits && a.endian === b.endian && a.values === b.values;
}

function isOver(a: CalibrationHit, b: CalibrationHit): boolean {
  return a.offset < b.offset + lengthOf(b.codec) && b.offset < a.offset + lengthOf(a.codec);
}

/** Places of the same codecs stand for each other, as far as each is less than chance: two layers of one pad. */
function withTwins(places: readonly FoundPlace[]): FoundPlace[] {
  const kin = Map.groupBy(places, kinOf);
  return places.map((place) => {
    const others = (kin.get(kinOf(place)) ?? []).filter((one) => one !== place && one.expected < WORTH);
    if (place.distance === null || place.expected >= WORTH || others.length === 0) return place;
    return {
      ...place,
      again: others.map(({ sticks }) => sticks.left?.offset ?? sticks.right?.offset ?? 0),
      expected: others.reduce((all, { expected }) => all * expected, place.expected),
    };
  });
}

function kinOf({ sticks }: FoundPlace): string {
  return JSON.stringify(Object.values(sticks).map(({ stick, codec }) => [stick, codec]));
}
