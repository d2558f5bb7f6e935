/** A stick used as direction buttons. */
import { z } from 'zod';
import { offSchema } from './edges.ts';
import { magnitude, type Step } from './step.ts';

export const digitalSchema = z.strictObject({
  digital: z.strictObject({ ways: z.literal([4, 8]), threshold: z.number().min(0).lt(1.5) }),
  off: offSchema,
});

/**
 * 4 ways: the larger axis where it exceeds the threshold, else 0; x where both are the same. 8 ways: the octant, centred
 * on multiples of 45°, where the magnitude exceeds the threshold. The output has magnitude 1.
 */
export function compileDigital(stage: z.infer<typeof digitalSchema>): Step {
  const { ways, threshold } = stage.digital;
  return ways === 4 ? (v) => larger(v, threshold) : (v) => octant(v, threshold);
}

function larger(v: Float64Array, threshold: number): void {
  const x = v[0] ?? 0;
  const y = v[1] ?? 0;
  const along = Math.abs(x) >= Math.abs(y);
  const beyond = Math.abs(along ? x : y) > threshold;
  v[0] = beyond && along ? Math.sign(x) : 0;
  v[1] = beyond && !along ? Math.sign(y) : 0;
}

function octant(v: Float64Array, threshold: number): void {
  if (magnitude(v) <= threshold) {
    v.fill(0);
    return;
  }
  const eighth = Math.round(Math.atan2(v[1] ?? 0, v[0] ?? 0) / (Math.PI / 4));
  const part = eighth % 2 === 0 ? 1 : Math.SQRT1_2;
  // Signs from the octant, not from cos and sin, so that a straight push has a true zero.
  v[0] = Math.abs(eighth) === 2 ? 0 : Math.abs(eighth) < 2 ? part : -part;
  v[1] = eighth % 4 === 0 ? 0 : eighth > 0 ? part : -part;
}
