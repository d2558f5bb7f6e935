/** Deflection of a stick from raw counts: +x right, +y up, fractions of full deflection. */
import type { Pair, StickFields } from '../pad/stick.ts';
import { deflectAxis } from './deflect-axis.ts';
import type { StickMapping } from './mapping.ts';

/** The free deflection of a point in raw counts as reported; see `deflectAxis` for the formula. */
export function deflect(mapping: StickMapping, fields: StickFields, u: Pair): Pair {
  return { x: deflectAxis(mapping.x, fields.x.up, u.x), y: deflectAxis(mapping.y, fields.y.up, u.y) };
}

/** The limited deflection, what a host gets: each axis held within −1 … 1. */
export function limit(d: Pair): Pair {
  return { x: limitAxis(d.x), y: limitAxis(d.y) };
}

/** One axis of `limit`. */
export function limitAxis(d: number): number {
  return d > 1 ? 1 : d < -1 ? -1 : d;
}
