/** Where the stick comes to rest, depending on the side it came from. */
import type { Dwell } from '../capture/evidence/evidence.ts';
import { mean } from '../numeric/mean.ts';
import type { StickFields } from '../pad/stick.ts';

/** A release comes from a side of an axis when its tilt lay within 60° of it: cos 60°, with room for rounding. */
const ALONG = 0.5 - 1e-9;

/**
 * Per axis the mean rest approached from + minus that approached from −, counts, right and up positive. Null on an axis
 * that was not approached from both sides, or where it is not known from where.
 */
export function restHysteresis(
  dwells: readonly Dwell[],
  fields: StickFields,
): { readonly x: number | null; readonly y: number | null } {
  return { x: axisHysteresis(dwells, 'x', fields.x.up), y: axisHysteresis(dwells, 'y', fields.y.up) };
}

function axisHysteresis(dwells: readonly Dwell[], axis: 'x' | 'y', up: 1 | -1): number | null {
  const plus: number[] = [];
  const minus: number[] = [];
  for (const { from, point } of dwells) {
    const side = from?.[axis] ?? 0;
    if (side >= ALONG) plus.push(point[axis]);
    else if (side <= -ALONG) minus.push(point[axis]);
  }
  return plus.length === 0 || minus.length === 0 ? null : up * (mean(plus) - mean(minus)) + 0;
}
