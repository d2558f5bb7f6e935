/** How long a contact bounces. */
import type { SwitchTrack } from '../capture/evidence/track.ts';

/**
 * A contact that changes again within this time of its last change bounces: common practice, a finger cannot press and
 * let go so fast. Contacts of small switches bounce for some milliseconds (from memory).
 */
const BOUNCE_US = 25_000;
/** Down, up and down again: two changes are a short tap, however short. */
const LEAST_CHANGES = 3;

/**
 * Longest bounce in milliseconds: from the first to the last of three changes or more that each follow the one before within
 * 25 ms; 0 where none do. What a pad's firmware already hid, or what is shorter than a report interval, cannot be seen. `isIn`
 * chooses the times that count.
 */
export function bounceMs(contact: SwitchTrack, isIn: (t: number) => boolean): number {
  let longest = 0;
  let since = Number.NaN;
  let last = Number.NaN;
  let changes = 0;
  // The first entry is the state when first told, no change.
  for (let i = 1; i < contact.t.length; i += 1) {
    const t = contact.t[i] ?? Number.NaN;
    if (!isIn(t)) continue;
    const goesOn = t - last <= BOUNCE_US;
    if (!goesOn) since = t;
    changes = goesOn ? changes + 1 : 1;
    last = t;
    if (changes >= LEAST_CHANGES) longest = Math.max(longest, last - since);
  }
  return longest / 1000;
}
