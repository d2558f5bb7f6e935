/** What a gate seen by the two sensors of a part looks like, turned round: from a rim point in counts back to the tilt. */

/** Order of the unknowns of the model. */
export const unknowns = ['xPlus', 'xMinus', 'yPlus', 'yMinus', 'centreX', 'centreY', 'lean', 'bend', 'corner'] as const;
export type Unknown = (typeof unknowns)[number];
/** A round gate has no corners: the last unknown is left out. */
export const ROUND = 8;
export const EIGHT_SIDED = 9;

const SIDE = Math.PI / 4;

/**
 * How far a rim point lies outside of the gate, as a share of the gate's radius; 0 on it. The point (dx, dy) is in counts
 * from the rest, y up. Each side of each axis has its span (counts at full tilt); bend β undoes the sensor's law, t = r·(1 +
 * β(1 − r²)) with r the share of the span; lean a = tan(σ/2) undoes a skew σ shared by both axes; the gate's centre stands
 * at (centreX, centreY), as tilts; an eight-sided gate has a corner at `corner` radians.
 */
export function outsideBy(p: Float64Array, dx: number, dy: number): number {
  const rx = dx / (dx >= 0 ? at(p, 0) : at(p, 1));
  const ry = dy / (dy >= 0 ? at(p, 2) : at(p, 3));
  const beta = at(p, 7);
  const tx = rx * (1 + beta * (1 - rx * rx));
  const ty = ry * (1 + beta * (1 - ry * ry));
  const lean = at(p, 6);
  const x = (tx - lean * ty) / (1 - lean * lean) - at(p, 4);
  const y = (ty - lean * tx) / (1 - lean * lean) - at(p, 5);
  const radius = Math.sqrt(x * x + y * y);
  return p.length === ROUND ? radius - 1 : radius / eightSided(Math.atan2(y, x) - at(p, 8)) - 1;
}

/** Radius of an eight-sided gate whose corners lie on the unit circle, `angle` from a corner. */
function eightSided(angle: number): number {
  const fromMiddleOfSide = angle - SIDE * Math.floor(angle / SIDE) - SIDE / 2;
  return Math.cos(SIDE / 2) / Math.cos(fromMiddleOfSide);
}

function at(values: Float64Array, index: number): number {
  return values[index] ?? Number.NaN;
}
