/** Weighs whether the seat, or a side of an axis, is what an outline shows: the two look alike but for a threefold wave. */
import type { Outline } from './fit-outline.ts';
import type { Unknown } from './outline-model.ts';
import { invertSymmetric } from './solve-normal.ts';

/** What may be wrong: the gate's centre about the rest, and how unlike the two sides of each axis are. */
export type Suspect = 'seat' | 'x' | 'y';
type Named = readonly Suspect[];

export interface Estimate {
  /** Posterior mean of (centre x, centre y, ln of x's plus over minus, of y's); y up. */
  readonly mean: readonly number[];
  /** Standard deviation of each. */
  readonly sigma: readonly number[];
  /** ln of the evidence for what was suspected, without what is common to all. */
  readonly evidence: number;
}

/** Standard deviations of sound parts, from makers' tolerances as far as they are published: workshop. */
const SOUND = {
  /** Of a well-fitted seat along each axis, a share of the half travel: 0.12° of 23°. */
  seat: 0.0052,
  /** Of the difference of two sides. */
  side: 0.005,
} as const;
/** How far a fault may go, a share: it bounds nothing, but makes a small effect speak for a sound part. */
const FAULTY = { seat: 0.08, side: 0.12 } as const;

const SIZE = 4;
/** What each of the four numbers is of the outline's unknowns. */
type Weights = Readonly<Partial<Record<Unknown, number>>>;

/**
 * Linear Gaussian model: v ~ N(truth, M) with M of the outline (its waves included) and of the rest, truth ~ N(0, P) with the
 * variances of a fault for what is suspected and of sound parts for the others. Mean P(P + M)⁻¹v, covariance P − P(P + M)⁻¹P,
 * evidence −½·vᵀ(P + M)⁻¹v − ½·ln det(P + M). `restVariance` is that of the mean rest in shares of the half travel. Source: any
 * text on Bayesian linear models, e.g. Bishop 2006, 2.3.3 (from memory). Null where the outline's covariance is none.
 */
export function weigh(
  outline: Outline,
  restVariance: { readonly x: number; readonly y: number },
  suspected: Named,
): Estimate | null {
  const { xPlus, xMinus, yPlus, yMinus, centreX, centreY } = outline.value;
  const v = [centreX, centreY, Math.log(xPlus / xMinus), Math.log(yPlus / yMinus)];
  const weights: readonly Weights[] = [
    { centreX: 1 },
    { centreY: 1 },
    { xPlus: 1 / xPlus, xMinus: -1 / xMinus },
    { yPlus: 1 / yPlus, yMinus: -1 / yMinus },
  ];
  const seat = suspected.includes('seat') ? FAULTY.seat : SOUND.seat;
  const side = (axis: Suspect): number => (suspected.includes(axis) ? FAULTY.side : SOUND.side);
  const prior = [seat, seat, side('x'), side('y')].map((sigma) => sigma ** 2);
  const sum = new Float64Array(SIZE * SIZE);
  weights.forEach((a, i) => {
    weights.forEach((b, k) => {
      sum[i * SIZE + k] = covarianceOf(outline, a, b);
    });
  });
  [restVariance.x, restVariance.y].forEach((variance, i) => {
    sum[i * SIZE + i] = (sum[i * SIZE + i] ?? 0) + variance;
  });
  prior.forEach((variance, i) => {
    sum[i * SIZE + i] = (sum[i * SIZE + i] ?? 0) + variance;
  });
  const inverse = invertSymmetric(sum, SIZE);
  if (inverse === null) return null;
  const pulled = v.map((_, i) => v.reduce((all, value, k) => all + (inverse[i * SIZE + k] ?? 0) * value, 0));
  const squared = v.reduce((all, value, i) => all + value * (pulled[i] ?? 0), 0);
  return {
    mean: pulled.map((value, i) => (prior[i] ?? 0) * value),
    sigma: prior.map((variance, i) => Math.sqrt(Math.max(0, variance - variance ** 2 * (inverse[i * SIZE + i] ?? 0)))),
    evidence: (logDeterminant(inverse) - squared) / 2,
  };
}

function covarianceOf(outline: Outline, a: Weights, b: Weights): number {
  const sum: Partial<Record<Unknown, number>> = { ...a };
  for (const [name, weight] of Object.entries(b) as [Unknown, number][]) sum[name] = (sum[name] ?? 0) + weight;
  return (outline.variance(sum) - outline.variance(a) - outline.variance(b)) / 2;
}

/** Of a symmetric positive definite matrix of size 4, by elimination. */
function logDeterminant(matrix: Float64Array): number {
  const rows = Float64Array.from(matrix);
  let sum = 0;
  for (let i = 0; i < SIZE; i += 1) {
    const pivot = rows[i * SIZE + i] ?? Number.NaN;
    sum += Math.log(pivot);
    for (let row = i + 1; row < SIZE; row += 1) {
      const factor = (rows[row * SIZE + i] ?? 0) / pivot;
      for (let k = i; k < SIZE; k += 1)
        rows[row * SIZE + k] = (rows[row * SIZE + k] ?? 0) - factor * (rows[i * SIZE + k] ?? 0);
    }
  }
  return sum;
}
