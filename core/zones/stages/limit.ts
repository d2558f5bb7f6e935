/** Limits of a vector. */
import { z } from 'zod';
import { limitAxis } from '../../mapping/deflect.ts';
import { offSchema } from './edges.ts';
import { magnitude, scale, type Step } from './step.ts';

export const limitSchema = z.strictObject({ limit: z.enum(['axis', 'radial']), off: offSchema });

/** `axis`: each axis within −1 … 1. `radial`: a magnitude above 1 becomes 1, the direction kept. */
export function compileLimit(stage: z.infer<typeof limitSchema>): Step {
  return stage.limit === 'axis' ? limitToSquare : limitToDisc;
}

export function limitToSquare(v: Float64Array): void {
  v[0] = limitAxis(v[0] ?? 0);
  v[1] = limitAxis(v[1] ?? 0);
}

export function limitToDisc(v: Float64Array): void {
  const m = magnitude(v);
  if (m > 1) scale(v, 1 / m);
}
