/** The step that the counts of an axis really move in: 1, or more where the firmware leaves out codes like a comb. */
import type { AxisField, Pair } from '../../pad/stick.ts';
import type { StickTrack } from './track.ts';

/** Chance, at most about this, that counts of step 1 would all happen to lie on a comb. */
const CHANCE = 1e-3;

/** The effective steps of both axes, counts, from all readings of a stick. */
export function effectiveSteps(readings: Pick<StickTrack, 'fields' | 'x' | 'y'>): Pair {
  const { fields, x, y } = readings;
  return { x: effectiveStep(x, fields.x), y: effectiveStep(y, fields.y) };
}

/**
 * A step g > 1 is stated where all k distinct counts differ by multiples of g and g^(k−2) ≥ 1000: two counts always share
 * a step, each further one would lie on it by chance in one of g cases. Counts at the limits of the field are left out:
 * what is clipped there lies on no comb (4095 among multiples of 8).
 */
export function effectiveStep(counts: ArrayLike<number>, field: Pick<AxisField, 'minimum' | 'maximum'>): number {
  const distinct = new Set<number>();
  let first: number | null = null;
  let step = 0;
  for (let i = 0; i < counts.length; i += 1) {
    const count = counts[i] ?? Number.NaN;
    if (count <= field.minimum || count >= field.maximum) continue;
    if (!Number.isInteger(count)) return 1;
    first ??= count;
    step = greatestCommonDivisor(step, Math.abs(count - first));
    if (step === 1) return 1;
    distinct.add(count);
  }
  return step > 1 && step ** (distinct.size - 2) * CHANCE >= 1 ? step : 1;
}

function greatestCommonDivisor(a: number, b: number): number {
  let [large, small] = [a, b];
  while (small !== 0) [large, small] = [small, large % small];
  return large;
}
