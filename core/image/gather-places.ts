/** Places that have bytes in common, as one place with its readings or as places of their own. */
import { aboutAsLikely, meanSquare } from './how-near.ts';
import type { MeasuredPlace, MeasuredPlaces } from './measured-places.ts';
import { endsOf, isOver, type NearSticks } from './near-stick.ts';
import { readingsOf } from './place-readings.ts';

/** A place with every reading of its bytes, the nearest first. */
interface ReadPlace {
  readonly best: MeasuredPlace;
  readonly readings: readonly NearSticks[];
}

const MOST_PLACES = 100;
/** Of places with a stick in common the shortest is the layer, unless it is so many times more to be expected. */
const TIMES_AS_EXPECTED = 100;

/**
 * Takes places from the least expected on. What has bytes in common with one is another reading of it, or nothing; but where layers
 * stand close together, a stick of one may be taken with a stick of the other: where that fits about as well, it is told too, behind
 * the layers.
 */
export function gatherPlaces({ sticks, places }: MeasuredPlaces, image: Uint8Array): ReadPlace[] {
  const gathered: ReadPlace[] = [];
  let left = places;
  while (left[0] !== undefined && gathered.length < MOST_PLACES) {
    const best = shortestLike(left[0], left, image);
    const readings = readingsOf(best.sticks, sticks, image);
    gathered.push({ best, readings: readings.map((reading) => reading.sticks) });
    const most = aboutAsLikely(readings[0]?.off ?? 0, best.sticks.length);
    left = left.filter(
      (place) =>
        !hasOver(place.sticks, best.sticks) ||
        (place.sticks.length === best.sticks.length &&
          isMixed(place.sticks, best.sticks) &&
          meanSquare(place.sticks, image) < most),
    );
  }
  return gathered;
}

function shortestLike(first: MeasuredPlace, places: readonly MeasuredPlace[], image: Uint8Array): MeasuredPlace {
  const most = aboutAsLikely(meanSquare(first.sticks, image), first.sticks.length);
  const alike = places.filter(
    ({ sticks, expected }) =>
      sticks.length === first.sticks.length &&
      expected <= TIMES_AS_EXPECTED * first.expected &&
      hasOver(sticks, first.sticks) &&
      meanSquare(sticks, image) < most,
  );
  return alike.reduce((best, place) => (sizeOf(place.sticks) < sizeOf(best.sticks) ? place : best), first);
}

function sizeOf(sticks: NearSticks): number {
  const { start, end } = endsOf(sticks);
  return end - start;
}

function hasOver(some: NearSticks, others: NearSticks): boolean {
  return some.some((a) => others.some((b) => isOver(a, b)));
}

/** One stick is where one of the others is, and one is elsewhere; none lies across both. */
function isMixed(some: NearSticks, others: NearSticks): boolean {
  const shared = some.map((a) => others.filter((b) => isOver(a, b)).length);
  return shared.includes(0) && !shared.includes(2);
}
