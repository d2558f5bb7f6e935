/** Where an image may hold the calibration of measured sticks: for pads whose memory nobody has mapped yet. */
import type { PadMapping } from '../mapping/mapping.ts';
import type { FoundPlace, PlaceReading } from './found-place.ts';
import { gatherPlaces } from './gather-places.ts';
import { placesOf } from './measured-places.ts';
import { endsOf, type NearSticks } from './near-stick.ts';
import { NumberShares } from './number-shares.ts';
import { scaleOf } from './other-numbers.ts';
import { chancesOf } from './place-chance.ts';
import { decodeStick } from './stick-codec.ts';
import { whatDecides } from './what-decides.ts';

/** Only places that chance alone seldom gives are named as each other's likes. */
const WORTH = 0.1;

/** From the least likely to be chance on. */
export function findPlaces(image: Uint8Array, measured: PadMapping): FoundPlace[] {
  const shares = new NumberShares(image, scaleOf(measured));
  const found = gatherPlaces(placesOf(measured, shares), image);
  const chances = chancesOf(
    found.map(({ best }) => best),
    measured,
    shares,
  );
  const places = found
    .map(({ best, readings }, index) => ({ best, readings, chance: chances[index] ?? 1 }))
    .sort((a, b) => a.chance - b.chance);
  const worth = places.filter(({ chance }) => chance < WORTH);
  return places.map(({ best, readings, chance }) => {
    const read = readings.map((sticks) => readingOf(image, sticks));
    const again = worth.filter((one) => one.best !== best && isAlike(one.best.sticks, best.sticks));
    return {
      readings: read,
      decides: whatDecides(read),
      again: chance < WORTH ? again.map((one) => endsOf(one.best.sticks).start) : [],
      chance,
    };
  });
}

function readingOf(image: Uint8Array, sticks: NearSticks): PlaceReading {
  const found = sticks.flatMap(({ sought: { stick, axes }, layout, offset, furthest }) => {
    const codec = layout.codecs[axes];
    const mapping = decodeStick(codec, image, offset);
    return mapping === null ? [] : [{ stick, codec, offset, mapping, furthest }];
  });
  const [left, right] = [found.find(({ stick }) => stick === 'left'), found.find(({ stick }) => stick === 'right')];
  return {
    sticks: Object.fromEntries(found.map((one) => [one.stick, one])),
    distance: left === undefined || right === undefined ? null : right.offset - left.offset,
  };
}

/** Both sticks in the same form and as far apart, whichever reading of a place is its nearest. */
function isAlike(some: NearSticks, others: NearSticks): boolean {
  const form = (sticks: NearSticks): string => sticks.map(({ layout }) => layout.codecs.xy.form).join();
  const [one, other] = [endsOf(some), endsOf(others)];
  return form(some) === form(others) && one.end - one.start === other.end - other.start;
}
