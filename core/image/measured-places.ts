/** Every place of an image where the measured numbers may stand, with how many such places it would hold anyway. */
import type { PadMapping } from '../mapping/mapping.ts';
import { expectedOf, expectedPair } from './expected-places.ts';
import { gridOf } from './finder-targets.ts';
import { isPair, TWIN_WITHIN, type NearStick, type NearSticks } from './near-stick.ts';
import type { NumberShares } from './number-shares.ts';
import { scanImage } from './scan-image.ts';
import { sticksBetween } from './sticks-between.ts';

export interface MeasuredPlace {
  readonly sticks: NearSticks;
  readonly expected: number;
}

export interface MeasuredPlaces {
  /** All of them, by their offsets. */
  readonly sticks: readonly NearStick[];
  /** From the least expected on: pairs, and sticks that no pair holds; of those at the very same bytes one stands for all. */
  readonly places: readonly MeasuredPlace[];
}

/** A longer list helps nobody; its ends are far more likely to be chance than its beginning. */
const MOST_STICKS = 2_000;
const MOST_PAIRS = 4_000;
const MOST_PLACES = 400;

export function placesOf(measured: PadMapping, shares: NumberShares): MeasuredPlaces {
  const bytes = shares.image.length;
  const sticks: NearStick[] = [];
  scanImage(gridOf([measured]), shares, 1, (near) => sticks.push(near));
  const kept = sticks.toSorted((a, b) => a.share - b.share).slice(0, MOST_STICKS);
  const pairs = pairsOf(kept, bytes);
  const paired = new Set(pairs.flat());
  const alone = kept.filter((near) => !paired.has(near)).map((near): NearSticks => [near]);
  const places = [...pairs.slice(0, MOST_PAIRS), ...alone]
    .map((near) => ({ sticks: near, expected: expectedOf(near, bytes) }))
    .sort((a, b) => a.expected - b.expected);
  return { sticks, places: oneEach(places).slice(0, MOST_PLACES) };
}

/** The left stick first; from the least expected on by the whole image. */
function pairsOf(sticks: readonly NearStick[], bytes: number): NearSticks[] {
  const right = sticks.filter(({ sought }) => sought.stick === 'right').sort((a, b) => a.offset - b.offset);
  return sticks
    .filter(({ sought }) => sought.stick === 'left')
    .flatMap((one) =>
      sticksBetween(right, one.offset - TWIN_WITHIN, one.offset + TWIN_WITHIN + 1).flatMap((other) =>
        isPair(one, other)
          ? [{ pair: [one, other] as const, expected: expectedPair(bytes, one.share, other.share) }]
          : [],
      ),
    )
    .sort((a, b) => a.expected - b.expected)
    .map(({ pair }) => pair);
}

/** Of the same bytes the first alone. */
function oneEach(places: readonly MeasuredPlace[]): MeasuredPlace[] {
  const seen = new Set<string>();
  return places.filter(({ sticks }) => {
    const at = sticks
      .map(({ offset, layout }) => `${offset}+${layout.length}`)
      .toSorted()
      .join();
    return !seen.has(at) && seen.add(at);
  });
}
