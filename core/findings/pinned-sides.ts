/** Sides of an axis at which the readings pile up on one count, as a sensor at its limit makes them. */
import { findCaptures } from '../capture/evidence/find-captures.ts';
import type { Track } from '../capture/evidence/track.ts';
import type { Pair, StickId } from '../pad/stick.ts';

export interface PinnedSide {
  readonly axis: 'x' | 'y';
  /** Of the deflection: +1 right or up. */
  readonly side: 1 | -1;
  /** Raw count at which they pile up. */
  readonly count: number;
  readonly readings: number;
  /** Share of the readings near the extreme that stand exactly at it. */
  readonly share: number;
}

const LEAST_READINGS = 12;
/** Of noisy readings no count takes so many; at a sensor's limit nearly all stand on it. */
const LEAST_SHARE = 0.5;
/** Noise below this part of a count makes a flat stretch of the gate look the same. */
const LEAST_NOISE = 0.4;

/**
 * Looks at the readings of the rim captures. `noise` is the σ of the rest on each axis in counts: without it, or where it is
 * below half a count, nothing can be told and nothing is claimed.
 */
export function pinnedSides(
  track: Track,
  stick: StickId,
  noise: { readonly x: number | null; readonly y: number | null } | null,
  step: Pair,
): PinnedSide[] {
  const readings = track.sticks[stick];
  if (readings === undefined || noise === null) return [];
  const rims = findCaptures(track, stick).captures.filter(({ purpose }) => purpose === 'rim');
  return (['x', 'y'] as const).flatMap((axis) => {
    const sigma = noise[axis];
    if (sigma === null || sigma < LEAST_NOISE * step[axis]) return [];
    const counts = rims.map(({ from, to }) => readings[axis].subarray(from, to));
    const reach = Math.ceil(4 * sigma);
    return ([1, -1] as const).flatMap((way) => {
      const side = (way * readings.fields[axis].up) as 1 | -1;
      const pile = pileAt(counts, way, reach);
      if (pile === null || pile.at < LEAST_READINGS || pile.at < LEAST_SHARE * pile.near) return [];
      return [{ axis, side, count: pile.count, readings: pile.at, share: pile.at / pile.near }];
    });
  });
}

/** How many readings stand at the extreme count, and how many within `reach` of it. */
function pileAt(parts: readonly Float64Array[], way: 1 | -1, reach: number) {
  let extreme = Number.NEGATIVE_INFINITY;
  for (const part of parts) for (const count of part) extreme = Math.max(extreme, way * count);
  if (!Number.isFinite(extreme)) return null;
  let at = 0;
  let near = 0;
  for (const part of parts)
    for (const count of part) {
      const short = extreme - way * count;
      if (short === 0) at += 1;
      if (short <= reach) near += 1;
    }
  return { count: way * extreme, at, near };
}
