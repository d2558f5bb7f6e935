/** Minimum output: whatever is not zero starts at m₀, to jump over a dead zone that follows. */
import { z } from 'zod';
import { offSchema } from './edges.ts';
import { magnitude, scale, type Step } from './step.ts';

export const minimumOutputSchema = z.strictObject({ minimumOutput: z.number().min(0).lt(1), off: offSchema });

/** 0 stays 0, else the magnitude becomes m₀ + (1 − m₀)·m. */
export function compileMinimumOutput(stage: z.infer<typeof minimumOutputSchema>): Step {
  const least = stage.minimumOutput;
  return (v) => {
    const m = magnitude(v);
    if (m !== 0) scale(v, (least + (1 - least) * m) / m);
  };
}
