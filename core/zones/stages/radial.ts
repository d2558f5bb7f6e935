/** Dead disc, the rest unchanged: the output jumps from 0 to the inner edge. */
import { z } from 'zod';
import { innerSchema, offSchema } from './edges.ts';
import { magnitude, scale, type Step } from './step.ts';

export const radialSchema = z.strictObject({ zone: z.literal('radial'), inner: innerSchema, off: offSchema });

/** 0 if m ≤ inner; else v. */
export function compileRadial(stage: z.infer<typeof radialSchema>): Step {
  const { inner } = stage;
  return (v) => {
    if (magnitude(v) <= inner) scale(v, 0);
  };
}
