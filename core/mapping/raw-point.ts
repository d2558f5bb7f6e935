/** The point in raw counts as reported that lies a difference away from another; differences have y turned up. */
import type { Pair, StickFields } from '../pad/stick.ts';

export function rawPoint(about: Pair, fields: StickFields, difference: Pair): Pair {
  return { x: about.x + fields.x.up * difference.x, y: about.y + fields.y.up * difference.y };
}
