/** Where on the unrolled gate the stick is now. */
import type { Pair, StickFields } from '../../core/pad/stick.ts';

/** Nearer to the middle than this share of half the field, a stick points nowhere. */
const LEAST_TILT = 0.3;

/** Degrees counter-clockwise from +x, y turned up, about the mean rest so far; null near the rest. */
export function rimCursor(x: number, y: number, fields: StickFields, rests: readonly Pair[]): number | null {
  if (Number.isNaN(x) || Number.isNaN(y)) return null;
  const middle = { x: (fields.x.minimum + fields.x.maximum) / 2, y: (fields.y.minimum + fields.y.maximum) / 2 };
  const about = rests.length === 0 ? middle : meanOf(rests);
  const across = (fields.x.up * (x - about.x)) / (fields.x.maximum - fields.x.minimum);
  const upward = (fields.y.up * (y - about.y)) / (fields.y.maximum - fields.y.minimum);
  if (2 * Math.hypot(across, upward) < LEAST_TILT) return null;
  const counts = Math.atan2(fields.y.up * (y - about.y), fields.x.up * (x - about.x));
  return ((counts * 180) / Math.PI + 360) % 360;
}

function meanOf(rests: readonly Pair[]): { readonly x: number; readonly y: number } {
  let x = 0;
  let y = 0;
  for (const rest of rests) {
    x += rest.x / rests.length;
    y += rest.y / rests.length;
  }
  return { x, y };
}
