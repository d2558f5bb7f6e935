/** How many places like one an image would hold anyway. */
import { endsOf, TWIN_WITHIN, type NearSticks } from './near-stick.ts';
import { bytesAround, REACHES, type Stand } from './nearby-numbers.ts';

/**
 * By the whole image of so many `bytes` or by what stands around, whichever is more. Of more than `enough` it is only told that it is
 * more.
 */
export function expectedOf(sticks: NearSticks, bytes: number, enough = Number.POSITIVE_INFINITY): number {
  const [one, other] = sticks;
  const whole = other === undefined ? expectedAlone(bytes, one.share) : expectedPair(bytes, one.share, other.share);
  return whole > enough ? whole : Math.max(whole, expectedNearby(sticks, bytes, enough));
}

/** How many such places `bytes` would hold where a stick fits at any one of them by this chance. */
function expectedAlone(bytes: number, share: number): number {
  return bytes * share;
}

/** The other stick may stand at any of the near places: so many for each place, not all. */
export function expectedPair(bytes: number, one: number, other: number): number {
  return bytes * Math.min(one, other) * Math.min(1, 2 * TWIN_WITHIN * Math.max(one, other));
}

/** The most that one of the stretches around the place would hold; what lies between its sticks is of each. */
function expectedNearby(sticks: NearSticks, bytes: number, enough: number): number {
  const [one, other] = sticks;
  const stand = standOf(sticks);
  let most = 0;
  for (const [round, reach] of REACHES.entries()) {
    const around = bytesAround(stand, reach, bytes);
    const chance = one.nearby.chance(stand, round);
    const expected =
      other === undefined
        ? expectedAlone(around, chance)
        : expectedPair(around, chance, other.nearby.chance(stand, round));
    most = Math.max(most, expected);
    if (most > enough) break;
  }
  return most;
}

function standOf(sticks: NearSticks): Stand {
  const { start, end } = endsOf(sticks);
  const [one, other] = sticks;
  if (other === undefined) return { start, between: { from: start, to: start }, end };
  const [first, second] = one.offset < other.offset ? [one, other] : [other, one];
  return { start, between: { from: first.offset + first.layout.length, to: second.offset }, end };
}
