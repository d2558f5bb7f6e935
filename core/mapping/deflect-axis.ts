/** One axis, raw count ↔ deflection; nothing is allocated, so that loops over readings can use it. */
import type { AxisMapping } from './mapping.ts';

/**
 * Free deflection of a raw count u, y-up (or right): up · f, f = (u − centre)/(max − centre) for u ≥ centre, else
 * (u − centre)/(centre − min). A fraction; ±1 at the edges, beyond them more. With `up` −1 the count shrinks upwards,
 * so that +1 is at `min`. Needs min < centre < max.
 */
export function deflectAxis(axis: AxisMapping, up: 1 | -1, count: number): number {
  const from = count - axis.centre;
  const fraction = from >= 0 ? from / (axis.max - axis.centre) : from / (axis.centre - axis.min);
  // The added 0 keeps −0 out of what is printed and compared.
  return up * fraction + 0;
}

/** The inverse: the raw count, whole or not, that has this free deflection. */
export function undeflectAxis(axis: AxisMapping, up: 1 | -1, deflection: number): number {
  const fraction = up * deflection;
  return axis.centre + fraction * (fraction >= 0 ? axis.max - axis.centre : axis.centre - axis.min);
}
