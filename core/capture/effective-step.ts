/** The step that the counts of an axis really move in: 1, or more where the firmware leaves out codes like a comb. */
import type { Pair } from '../pad/stick.ts';

/** Chance, at most about this, that counts of step 1 would all happen to lie on a comb. */
const CHANCE = 1e-3;

/** The effective steps of both axes, counts, from all readings of a stick. */
export function effectiveSteps(readings: { readonly x: ArrayLike<number>; readonly y: ArrayLike<number> }): Pair {
  return { x: effectiveStep(readings.x), y: effectiveStep(readings.y) };
}

/**
 * A step g > 1 is stated where all k distinct counts differ by multiples of g and g^(k−2) ≥ 1000: two counts always share
 * a step, each further one would lie on it by chance in one of g cases.
 */
export function effectiveStep(counts: ArrayLike<number>): number {
  const step = sharedStep(counts);
  if (step <= 1) return 1;
  const distinct = new Set<number>();
  for (let i = 0; i < counts.length; i += 1) {
    distinct.add(counts[i] ?? Number.NaN);
    if (step ** (distinct.size - 2) * CHANCE >= 1) return step;
  }
  return 1;
}

/** Greatest common divisor of all differences; 1 where a value is not a whole count, 0 where all are the same. */
function sharedStep(counts: ArrayLike<number>): number {
  const first = counts[0] ?? 0;
  let step = 0;
  for (let i = 0; i < counts.length; i += 1) {
    const value = counts[i] ?? Number.NaN;
    if (!Number.isInteger(value)) return 1;
    step = greatestCommonDivisor(step, Math.abs(value - first));
    if (step === 1) return 1;
  }
  return step;
}

function greatestCommonDivisor(a: number, b: number): number {
  let [large, small] = [a, b];
  while (small !== 0) [large, small] = [small, large % small];
  return large;
}
