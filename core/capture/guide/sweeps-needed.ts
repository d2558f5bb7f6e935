/** How many slow sweeps a travel capture takes to tell a count that never occurs from one that was just not met. */
import type { StickFields } from '../../pad/stick.ts';

/** What the neighbours of a missing count must average, with a quarter to spare for uneven hands. */
const VISITS = 15;
/** A stick with sensor counts travels over about this share of its field; common practice. */
const TRAVELLED = 0.65;
/** A slow sweep from gate to gate, in seconds, and those along one axis for one each way. */
const SWEEP_SECONDS = 3;
const WAYS = 2;
const LEAST = 2;
/** More tires the hand: then a slower rate leaves missing counts open. */
const MOST = 6;

/**
 * Sweeps toward each of four directions, 2 to 6: visits · counts travelled / (reports a second · 3 s · 2 ways). 2 where the
 * rate is not known.
 */
export function sweepsNeeded(fields: StickFields, rateHz: number | null): number {
  if (rateHz === null || !(rateHz > 0)) return LEAST;
  const counts = TRAVELLED * Math.max(fields.x.maximum - fields.x.minimum, fields.y.maximum - fields.y.minimum);
  return Math.min(MOST, Math.max(LEAST, Math.ceil((VISITS * counts) / (rateHz * SWEEP_SECONDS * WAYS))));
}
