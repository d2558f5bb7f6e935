/**
 * Maps between the square −1 … 1 and the unit disc. Source of the elliptical and the squircular map: C. Fong, "Analytical
 * Methods for Squaring the Disc", arXiv:1509.06344; the radial one stretches each ray.
 * The maps are defined on their square or disc alone: what lies outside is first brought to its border.
 */
import { z } from 'zod';
import { offSchema } from './edges.ts';
import { limitToDisc, limitToSquare } from './limit.ts';
import { magnitude, scale, type Step } from './step.ts';

export const shapeSchema = z.strictObject({
  shape: z.enum(['discToSquare', 'squareToDisc']),
  map: z.enum(['elliptical', 'squircular', 'radial']),
  off: offSchema,
});

const toSquare = { elliptical: ellipticalToSquare, squircular: squircularToSquare, radial: radialToSquare };
const toDisc = { elliptical: ellipticalToDisc, squircular: squircularToDisc, radial: radialToDisc };

export function compileShape(stage: z.infer<typeof shapeSchema>): Step {
  if (stage.shape === 'discToSquare') {
    const map = toSquare[stage.map];
    return (v) => {
      limitToDisc(v);
      map(v);
      // Rounding can carry a point of the rim past the square's border.
      limitToSquare(v);
    };
  }
  const map = toDisc[stage.map];
  return (v) => {
    limitToSquare(v);
    map(v);
  };
}

/** u = x·√(1 − y²/2), v = y·√(1 − x²/2). */
function ellipticalToDisc(v: Float64Array): void {
  const x = v[0] ?? 0;
  const y = v[1] ?? 0;
  v[0] = x * Math.sqrt(1 - (y * y) / 2);
  v[1] = y * Math.sqrt(1 - (x * x) / 2);
}

/** x = ½√(2 + u² − v² + 2√2·u) − ½√(2 + u² − v² − 2√2·u); y the same with u and v changed over. */
function ellipticalToSquare(v: Float64Array): void {
  const x = v[0] ?? 0;
  const y = v[1] ?? 0;
  const difference = x * x - y * y;
  v[0] = halfDifference(2 + difference, 2 * Math.SQRT2 * x);
  v[1] = halfDifference(2 - difference, 2 * Math.SQRT2 * y);
}

function halfDifference(sum: number, part: number): number {
  return (Math.sqrt(Math.max(0, sum + part)) - Math.sqrt(Math.max(0, sum - part))) / 2;
}

/** u = x·√(x² + y² − x²y²)/√(x² + y²), v likewise. */
function squircularToDisc(v: Float64Array): void {
  const x = v[0] ?? 0;
  const y = v[1] ?? 0;
  const m2 = x * x + y * y;
  if (m2 !== 0) scale(v, Math.sqrt((m2 - x * x * y * y) / m2));
}

/**
 * Both points lie on one ray, so that (x, y) = k·(u, v) with k⁴u²v² − k²s + s = 0, s = u² + v². The root is taken as
 * k² = 2/(1 + √(1 − 4u²v²/s)), which has no gap on the axes; at the corners half the digits are lost.
 */
function squircularToSquare(v: Float64Array): void {
  const x = v[0] ?? 0;
  const y = v[1] ?? 0;
  const m2 = x * x + y * y;
  if (m2 === 0) return;
  scale(v, Math.sqrt(2 / (1 + Math.sqrt(Math.max(0, 1 - (4 * x * x * y * y) / m2)))));
}

function radialToDisc(v: Float64Array): void {
  const m = magnitude(v);
  if (m !== 0) scale(v, largerAxis(v) / m);
}

function radialToSquare(v: Float64Array): void {
  const larger = largerAxis(v);
  if (larger !== 0) scale(v, magnitude(v) / larger);
}

function largerAxis(v: Float64Array): number {
  return Math.max(Math.abs(v[0] ?? 0), Math.abs(v[1] ?? 0));
}
