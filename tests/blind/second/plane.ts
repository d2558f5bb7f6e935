/** Places and directions of the plane a stick tilts in: x to the right, y up, degrees counter-clockwise from +x. */

export interface Vec {
  readonly x: number;
  readonly y: number;
}

export const ORIGIN: Vec = { x: 0, y: 0 };

export function polar(size: number, degrees: number): Vec {
  const angle = (degrees * Math.PI) / 180;
  return { x: size * Math.cos(angle), y: size * Math.sin(angle) };
}

export function plus(one: Vec, other: Vec): Vec {
  return { x: one.x + other.x, y: one.y + other.y };
}

export function minus(one: Vec, other: Vec): Vec {
  return { x: one.x - other.x, y: one.y - other.y };
}

export function times(one: Vec, factor: number): Vec {
  return { x: one.x * factor, y: one.y * factor };
}

export function sizeOf(one: Vec): number {
  return Math.hypot(one.x, one.y);
}

/** In [0, 360). */
export function directionOf({ x, y }: Vec): number {
  return ((Math.atan2(y, x) * 180) / Math.PI + 360) % 360;
}

/** Turned counter-clockwise. */
export function turnedBy(one: Vec, degrees: number): Vec {
  return polar(sizeOf(one), directionOf(one) + degrees);
}

/** The part of a place that lies in a direction. */
export function along(one: Vec, degrees: number): number {
  const unit = polar(1, degrees);
  return one.x * unit.x + one.y * unit.y;
}

/** Degrees from one direction to another, the short way, 0 to 180. */
export function apart(one: number, other: number): number {
  return Math.abs(((((one - other) % 360) + 540) % 360) - 180);
}
