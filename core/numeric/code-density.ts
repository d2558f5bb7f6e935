/**
 * Code density (histogram) test of a converter: where its codes change, from how often each occurs under a *known* stimulus.
 *
 * Only for a known one: a ramp of even speed, or a sine of known centre and amplitude that runs well over both ends (a circle at even speed gives
 * the sine's arcsine density on each axis). A hand's sweep is neither: its counts say which codes are missing, not how wide they are.
 * Source: IEEE 1241, histogram tests (from memory); the worked examples are in tests/reference.
 */
import { linearFit } from './linear-fit.ts';

/** Below this a code counts as missing: it is a tenth as wide as it should be, or less. Source: IEEE 1241 (from memory). */
const missingFrom = -0.9;

/** Errors in steps of the converter (LSB): code k of N lies between the transitions T[k] and T[k + 1], k = 1 … N − 1. */
export interface StepErrors {
  /** Differential: width of each inner code, less 1, from code 1 on. The two outer codes have no width. */
  readonly differential: readonly number[];
  /** Integral: how far each transition lies off the line through the first and the last, from T[1] on. */
  readonly integral: readonly number[];
  /** The same off the least-squares line of all transitions. */
  readonly integralFromBestLine: readonly number[];
  /** Codes whose differential error is −0.9 or less. */
  readonly missing: readonly number[];
}

/** Transitions under a ramp, in hits from its start: T[k] is the number of hits below code k, for k = 1 … N − 1. `hits` of codes 0 … N − 1. */
export function rampTransitions(hits: ArrayLike<number>): Float64Array {
  const transitions = new Float64Array(Math.max(0, hits.length - 1));
  let below = 0;
  for (let code = 0; code < transitions.length; code += 1) {
    below += hits[code] ?? NaN;
    transitions[code] = below;
  }
  return transitions;
}

/**
 * Transitions under a sine about `centre` with `amplitude`, in their unit: T[k] = centre − amplitude·cos(π·H/S), H hits below code k of S in all.
 */
export function sineTransitions(hits: ArrayLike<number>, centre: number, amplitude: number): Float64Array {
  const below = rampTransitions(hits);
  const all = (below.at(-1) ?? NaN) + (hits[hits.length - 1] ?? NaN);
  return below.map((count) => centre - amplitude * Math.cos((Math.PI * count) / all));
}

/**
 * Errors of the steps between transitions in any unit; one step is the mean width of the inner codes, (T[N − 1] − T[1])/(N − 2).
 * Null with fewer than two transitions, or where they do not rise from the first to the last.
 */
export function stepErrors(transitions: ArrayLike<number>): StepErrors | null {
  const count = transitions.length;
  const first = transitions[0] ?? NaN;
  const step = ((transitions[count - 1] ?? NaN) - first) / (count - 1);
  if (count < 2 || !(step > 0)) return null;
  const integral = Array.from({ length: count }, (_, k) => ((transitions[k] ?? NaN) - first) / step - k);
  const line = linearFit([...integral.keys()], integral);
  const differential = integral.slice(1).map((after, k) => after - (integral[k] ?? NaN));
  return {
    differential,
    integral,
    integralFromBestLine: integral.map((off, k) => off - (line === null ? NaN : line.intercept + line.slope * k)),
    missing: differential.flatMap((error, k) => (error <= missingFrom ? [k + 1] : [])),
  };
}
