/** Dead zone per axis that widens with the other axis: keeps a push along one axis clean at full tilt. */
import { z } from 'zod';
import { innerSchema, offSchema } from './edges.ts';
import type { Step } from './step.ts';

export const slopedAxialSchema = z.strictObject({
  zone: z.literal('slopedAxial'),
  inner: innerSchema,
  slope: z.number().min(0).max(10),
  off: offSchema,
});

/** Per axis 0 if |x| ≤ inner + slope · |y|, both judged on the stage's input; else unchanged. */
export function compileSlopedAxial(stage: z.infer<typeof slopedAxialSchema>): Step {
  const { inner, slope } = stage;
  return (v) => {
    const x = v[0] ?? 0;
    const y = v[1] ?? 0;
    if (Math.abs(x) <= inner + slope * Math.abs(y)) v[0] = 0;
    if (Math.abs(y) <= inner + slope * Math.abs(x)) v[1] = 0;
  };
}
