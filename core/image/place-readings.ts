/** The readings of one place: ways to take the same bytes that fit the measured numbers about as well as each other. */
import { aboutAsLikely, meanSquare } from './how-near.ts';
import { isOver, isPair, type NearStick, type NearSticks } from './near-stick.ts';
import { sticksBetween } from './sticks-between.ts';

export interface Reading {
  readonly sticks: NearSticks;
  /** Mean square of what it is off by. */
  readonly off: number;
}

/** No stick is longer, bytes. */
const LONGEST = 12;

/**
 * From the nearest on. `sticks`: all of the image, by their offsets, for a list that was cut may lack the right one. A record may begin
 * at another number where what stands beside it reads alike, both of its sticks then.
 */
export function readingsOf(place: NearSticks, sticks: readonly NearStick[], image: Uint8Array): Reading[] {
  const most = aboutAsLikely(meanSquare(place, image), place.length);
  // The mean of both sticks counts: one alone may be off by twice that.
  const slots = place.map((own) =>
    sticksBetween(sticks, own.offset - LONGEST + 1, own.offset + own.layout.length).filter(
      (near) => isOver(near, own) && meanSquare([near], image) <= place.length * most,
    ),
  );
  const [ones = [], others] = slots;
  const [one, other] = place;
  const readings = (
    other === undefined || others === undefined
      ? ones.map((near): NearSticks => [near])
      : pairsOf(ones, others, other.offset - one.offset)
  )
    .map((read) => ({ sticks: read, off: meanSquare(read, image) }))
    .sort((a, b) => a.off - b.off);
  const nearest = readings[0]?.off ?? 0;
  return readings.filter(({ off }) => off < aboutAsLikely(nearest, place.length));
}

/** So many bytes apart; the left stick first. */
function pairsOf(ones: readonly NearStick[], others: readonly NearStick[], apart: number): NearSticks[] {
  return ones.flatMap((one) =>
    others.flatMap((other): NearSticks[] => {
      if (other.offset - one.offset !== apart || one.sought.stick === other.sought.stick || !isPair(one, other))
        return [];
      return [one.sought.stick === 'left' ? [one, other] : [other, one]];
    }),
  );
}
