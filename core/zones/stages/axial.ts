/** Dead zone per axis: a cross with a dead square in its middle. */
import { z } from 'zod';
import { innerSchema, isInnerWithin, INNER_WITHIN, offSchema, outerSchema, rescale, USUAL_OUTER } from './edges.ts';
import type { Step } from './step.ts';

export const axialSchema = z
  .strictObject({
    zone: z.literal('axial'),
    inner: innerSchema,
    outer: outerSchema.exactOptional(),
    rescale: z.boolean().exactOptional(),
    off: offSchema,
  })
  .refine((stage) => stage.rescale !== true || isInnerWithin(stage), INNER_WITHIN);

/** 0 if |x| ≤ inner; else x, or sgn x · min(1, (|x| − inner)/(outer − inner)) when rescaled; y likewise, each alone. */
export function compileAxial(stage: z.infer<typeof axialSchema>): Step {
  const { inner, outer = USUAL_OUTER } = stage;
  const one =
    stage.rescale === true
      ? (part: number) => (part < 0 ? 0 - rescale(-part, inner, outer) : rescale(part, inner, outer))
      : (part: number) => (Math.abs(part) <= inner ? 0 : part);
  return (v) => {
    v[0] = one(v[0] ?? 0);
    v[1] = one(v[1] ?? 0);
  };
}
