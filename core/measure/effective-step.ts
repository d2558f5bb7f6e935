/** The step that the counts of an axis really move in: 1, or more where the firmware leaves out codes like a comb. */
import type { StickEvidence } from '../capture/evidence.ts';
import type { Pair } from '../pad/stick.ts';

/** Chance, at most about this, that counts of step 1 would all happen to lie on a comb. */
const CHANCE = 1e-3;

/**
 * The effective steps of both axes in counts, from every settled reading and the gate trace. A step g > 1 is stated where
 * all k distinct counts differ by multiples of g and g^(k−2) ≥ 1000: two counts always share a step, each further one
 * would lie on it by chance in one of g cases.
 */
export function effectiveSteps(evidence: StickEvidence): Pair {
  const lists = [...(evidence.rest?.dwells ?? []), ...(evidence.still ?? [])].map((dwell) => dwell.readings);
  if (evidence.rim !== null) lists.push(evidence.rim.trace);
  return { x: effectiveStep(lists, 0), y: effectiveStep(lists, 1) };
}

/** `lists` hold x and y in turn; `offset` 0 takes x, 1 takes y. */
function effectiveStep(lists: readonly (readonly number[])[], offset: 0 | 1): number {
  const step = sharedStep(lists, offset);
  if (step <= 1) return 1;
  const distinct = new Set<number>();
  for (const list of lists) for (let i = offset; i < list.length; i += 2) distinct.add(list[i] ?? 0);
  return step ** (distinct.size - 2) * CHANCE >= 1 ? step : 1;
}

/** Greatest common divisor of all differences; 1 where a value is not a whole count, 0 where all are the same. */
function sharedStep(lists: readonly (readonly number[])[], offset: 0 | 1): number {
  let first: number | null = null;
  let step = 0;
  for (const list of lists)
    for (let i = offset; i < list.length; i += 2) {
      const value = list[i] ?? 0;
      if (!Number.isInteger(value)) return 1;
      first ??= value;
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
