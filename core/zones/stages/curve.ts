/** Response curve on the magnitude; the direction is kept. */
import { z } from 'zod';
import { offSchema } from './edges.ts';
import { magnitude, scale, type Step } from './step.ts';

const pointSchema = z.tuple([z.number().min(0).max(1.5), z.number().min(0).max(1.5)]).readonly();
const pointsSchema = z
  .array(pointSchema)
  .min(2)
  .max(256)
  .refine((points) => points.every((point, index) => index === 0 || point[0] > (points[index - 1]?.[0] ?? 0)), {
    message: 'must have first numbers that grow from each point to the next',
  })
  .readonly();

export const curveSchema = z.strictObject({
  curve: z.union([z.strictObject({ exponent: z.number().gt(0).max(10) }), z.strictObject({ points: pointsSchema })]),
  off: offSchema,
});

/**
 * `exponent` e: m becomes mᵉ. `points`: straight lines through the points (input, output); before the first and after
 * the last the output stays that of the end point. A vector of 0 has no direction and stays 0.
 */
export function compileCurve(stage: z.infer<typeof curveSchema>): Step {
  const { curve } = stage;
  const bend = 'exponent' in curve ? exponentCurve(curve.exponent) : pointCurve(curve.points);
  return (v) => {
    const m = magnitude(v);
    if (m !== 0) scale(v, bend(m) / m);
  };
}

function exponentCurve(exponent: number): (m: number) => number {
  return (m) => m ** exponent;
}

function pointCurve(points: readonly (readonly [number, number])[]): (m: number) => number {
  const from = Float64Array.from(points, (point) => point[0]);
  const to = Float64Array.from(points, (point) => point[1]);
  const last = points.length - 1;
  return (m) => {
    if (m <= (from[0] ?? 0)) return to[0] ?? 0;
    for (let end = 1; end <= last; end += 1) {
      const right = from[end] ?? 0;
      if (m > right) continue;
      const left = from[end - 1] ?? 0;
      const low = to[end - 1] ?? 0;
      return low + (((to[end] ?? 0) - low) * (m - left)) / (right - left);
    }
    return to[last] ?? 0;
  };
}
