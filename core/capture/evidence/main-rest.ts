/** Where a stick rests, told from places where it stood still. */
import type { Pair, StickFields } from '../../pad/stick.ts';
import { tiltOf } from './describe-dwell.ts';

/** Returns scatter by some hundredths of the half range; a stick that is held lies farther off. */
export const REST_SHARE = 0.1;

/**
 * The place with most others within a tenth of the half range; among equals the one nearest the middle of the fields.
 * Null without places.
 */
export function mainRest(places: readonly Pair[], fields: StickFields): Pair | null {
  const middle = middleOf(fields);
  let best: { readonly near: Pair[]; readonly off: number } | null = null;
  for (const place of places) {
    const near = places.filter((other) => tiltBetween(fields, place, other) <= REST_SHARE);
    const off = tiltBetween(fields, middle, place);
    if (best === null || near.length > best.near.length || (near.length === best.near.length && off < best.off))
      best = { near, off };
  }
  if (best === null) return null;
  const { near } = best;
  const meanOf = (axis: 'x' | 'y'): number => near.reduce((sum, place) => sum + place[axis], 0) / near.length;
  return { x: meanOf('x'), y: meanOf('y') };
}

export function middleOf(fields: StickFields): Pair {
  return {
    x: (fields.x.minimum + fields.x.maximum) / 2,
    y: (fields.y.minimum + fields.y.maximum) / 2,
  };
}

/** Distance of two points in shares of the half range. */
export function tiltBetween(fields: StickFields, a: Pair, b: Pair): number {
  return tiltOf(fields, { x: a.x - b.x, y: a.y - b.y });
}
