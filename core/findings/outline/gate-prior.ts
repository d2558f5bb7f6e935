/** What is known of the outline's unknowns before its points are looked at: a normal distribution. */
import { FIRST_WAVE, ROUND, unknownAt } from './outline-model.ts';

export interface Prior {
  readonly mean: Float64Array;
  /** Inverse of the covariance, row by row; zero where nothing is known. */
  readonly precision: Float64Array;
}

/** Standard deviation of the cosine and of the sine of each wave of a moulded gate, a share of its radius: common practice. */
export const WAVE_SIGMA = 0.003;
/** Wide: it only holds the unknown where the waves would hide it. */
const BEND_SIGMA = 0.1;
const ROUNDING_SIGMA = 0.3;

/** Of a gate that nobody knows: its waves as moulding makes them, about none. */
export function mouldedGate(n: number): Prior {
  const precision = new Float64Array(n * n);
  for (let i = FIRST_WAVE; i < ROUND; i += 1) precision[i * n + i] = 1 / WAVE_SIGMA ** 2;
  precision[unknownAt.bend * n + unknownAt.bend] = 1 / BEND_SIGMA ** 2;
  if (n > unknownAt.rounding) precision[unknownAt.rounding * n + unknownAt.rounding] = 1 / ROUNDING_SIGMA ** 2;
  return { mean: new Float64Array(n), precision };
}

/** Σ (wave/τ)² + (bend/τ)²: what waves and law are beyond those of a usual gate and part. */
export function beyondUsual(p: Float64Array): number {
  let sum = ((p[unknownAt.bend] ?? 0) / BEND_SIGMA) ** 2;
  for (let i = FIRST_WAVE; i < ROUND; i += 1) sum += ((p[i] ?? 0) / WAVE_SIGMA) ** 2;
  return sum;
}
