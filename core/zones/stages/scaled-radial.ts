/** Dead disc, the rest stretched so that the output starts at 0 and is full at the outer edge. */
import { z } from 'zod';
import { innerSchema, isInnerWithin, INNER_WITHIN, offSchema, outerSchema, rescale, USUAL_OUTER } from './edges.ts';
import { magnitude, scale, type Step } from './step.ts';

export const scaledRadialSchema = z
  .strictObject({
    zone: z.literal('scaledRadial'),
    inner: innerSchema,
    outer: outerSchema.exactOptional(),
    off: offSchema,
  })
  .refine(isInnerWithin, INNER_WITHIN);

/** 0 if m ≤ inner; else (v/m) · min(1, (m − inner)/(outer − inner)). */
export function compileScaledRadial(stage: z.infer<typeof scaledRadialSchema>): Step {
  const { inner, outer = USUAL_OUTER } = stage;
  return (v) => stretch(v, inner, outer);
}

/** The rule of one moment, shared with the zone by sectors. */
export function stretch(v: Float64Array, inner: number, outer: number): void {
  const m = magnitude(v);
  scale(v, m === 0 ? 0 : rescale(m, inner, outer) / m);
}
