/** The steps of a number of so many bits, per axis; what lies beyond −1 … 1 takes the last step. */
import { z } from 'zod';
import { limitAxis } from '../../mapping/deflect.ts';
import { offSchema } from './edges.ts';
import type { Step } from './step.ts';

export const quantiseSchema = z.strictObject({
  quantise: z.strictObject({ bits: z.int().min(2).max(24), levels: z.enum(['signed', 'even']) }),
  off: offSchema,
});

/**
 * `signed`: the nearest k/(2ⁿ⁻¹ − 1), halves away from zero. `even`: the nearest of 2ⁿ levels (2k + 1)/(2ⁿ − 1), spread
 * evenly from −1 to 1; none of them is zero, and 0 becomes the one above it: that alone leaks.
 */
export function compileQuantise(stage: z.infer<typeof quantiseSchema>): Step {
  const { bits, levels } = stage.quantise;
  const one = levels === 'signed' ? signedLevels(2 ** (bits - 1) - 1) : evenLevels(2 ** bits - 1);
  return (v) => {
    v[0] = one(limitAxis(v[0] ?? 0));
    v[1] = one(limitAxis(v[1] ?? 0));
  };
}

function signedLevels(largest: number): (part: number) => number {
  return (part) => {
    const level = Math.round(Math.abs(part) * largest) / largest;
    return part < 0 ? 0 - level : level;
  };
}

function evenLevels(largest: number): (part: number) => number {
  return (part) => {
    const level = Math.min(largest, 2 * Math.floor((Math.abs(part) * largest) / 2) + 1) / largest;
    return part < 0 ? -level : level;
  };
}
