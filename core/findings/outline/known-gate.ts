/** What one survey tells of a gate, so that another survey in the same shell can look finer than moulded gates differ. */
import type { Prior } from './gate-prior.ts';
import type { Sides } from './gate-shape.ts';
import type { OutlineFit } from './iterate-outline.ts';
import { FIRST_WAVE, ROUND, SPANS, unknownAt, WAVES } from './outline-model.ts';
import { invertSymmetric } from './solve-normal.ts';

/**
 * `earlier part`: another part, found sound, in the same shell. `reference part`: one that is known to stand straight and to read
 * alike on all sides. `ring turned`: this very part, the gate's ring turned by 180° (reversal).
 */
export const gateSources = ['earlier part', 'reference part', 'ring turned'] as const;
export type GateSource = (typeof gateSources)[number];

export interface KnownGate {
  readonly from: GateSource;
  readonly sides: Sides;
  readonly prior: Prior;
}

/** Standard deviations of the part that was in the shell: its seat along each axis, of the difference of two sides over their mean. */
const SPREAD: Readonly<Record<Exclude<GateSource, 'ring turned'>, { readonly seat: number; readonly side: number }>> = {
  // 0.12° of 23°; as of sound parts.
  'earlier part': { seat: 0.0052, side: 0.005 },
  // ± 0.05° and ± 0.5 %, as an expanded uncertainty.
  'reference part': { seat: 0.0011, side: 0.0025 },
};
/** By how much a ring's middle lies beside that of its shell: it moves to the other side, by twice as much, when the ring is turned. */
const RING_ASIDE = 2 * 0.003;
/** Waves of which less is known than this were fitted without noise. */
const LEAST_SIGMA = 1e-5;

/**
 * Of another part the posterior of the waves (and of the corners' rounding) counts, with what was known of that part: its centre
 * 0 ± seat, each axis (p₊ − p₋)/p̄ = 0 ± side. Of this very part all unknowns count, the waves of odd folds with their signs changed,
 * as they turn with the ring; the ring's own middle may lie elsewhere. Null where the fit's covariance has no inverse.
 */
export function knownGate({ p, sides, covariance }: OutlineFit, from: GateSource): KnownGate | null {
  const n = p.length;
  const told = invertSymmetric(widened(covariance, n), n);
  if (told === null) return null;
  if (from === 'ring turned') return { from, sides, prior: turnedRing(p, told, n) };
  const mean = Float64Array.from(p);
  const at = condition(told, mean, n, SPREAD[from]);
  if (at === null) return null;
  const kept = Array.from({ length: n }, (_, i) => i).filter(
    (i) => (i >= FIRST_WAVE && i < ROUND) || i === unknownAt.rounding,
  );
  const block = Float64Array.from({ length: kept.length ** 2 }, (_, i) => {
    const [row = 0, column = 0] = [kept[Math.floor(i / kept.length)], kept[i % kept.length]];
    return at.covariance[row * n + column] ?? 0;
  });
  const inner = invertSymmetric(block, kept.length);
  if (inner === null) return null;
  const precision = new Float64Array(n * n);
  kept.forEach((row, i) => {
    kept.forEach((column, k) => {
      precision[row * n + column] = inner[i * kept.length + k] ?? 0;
    });
  });
  return { from, sides, prior: { mean: at.mean, precision } };
}

/** No unknown is known better than to rounding, so that the inverse exists. */
function widened(covariance: Float64Array, n: number): Float64Array {
  const wide = Float64Array.from(covariance);
  for (let i = SPANS; i < n; i += 1) wide[i * n + i] = (wide[i * n + i] ?? 0) + LEAST_SIGMA ** 2;
  return wide;
}

/** The posterior of a fit, given what is known of its part: precision + Σ hhᵀ/s², each h·p = 0 ± s. */
function condition(
  told: Float64Array,
  p: Float64Array,
  n: number,
  spread: { readonly seat: number; readonly side: number },
): { readonly mean: Float64Array; readonly covariance: Float64Array } | null {
  const { xPlus, xMinus, yPlus, yMinus, centreX, centreY } = unknownAt;
  const side = (plus: number, minus: number): Float64Array => {
    const mean = ((p[plus] ?? 0) + (p[minus] ?? 0)) / 2;
    const h = new Float64Array(n);
    h[plus] = 1 / mean;
    h[minus] = -1 / mean;
    return h;
  };
  const one = (index: number): Float64Array => {
    const h = new Float64Array(n);
    h[index] = 1;
    return h;
  };
  const seen = [
    { h: one(centreX), s: spread.seat },
    { h: one(centreY), s: spread.seat },
    { h: side(xPlus, xMinus), s: spread.side },
    { h: side(yPlus, yMinus), s: spread.side },
  ];
  const precision = Float64Array.from(told);
  const pull = new Float64Array(n);
  for (const { h, s } of seen) {
    const stands = h.reduce((sum, weight, i) => sum + weight * (p[i] ?? 0), 0);
    for (let i = 0; i < n; i += 1) {
      pull[i] = (pull[i] ?? 0) - ((h[i] ?? 0) * stands) / s ** 2;
      for (let k = 0; k < n; k += 1)
        precision[i * n + k] = (precision[i * n + k] ?? 0) + ((h[i] ?? 0) * (h[k] ?? 0)) / s ** 2;
    }
  }
  const covariance = invertSymmetric(precision, n);
  if (covariance === null) return null;
  const mean = p.map((value, i) => {
    let by = 0;
    for (let k = 0; k < n; k += 1) by += (covariance[i * n + k] ?? 0) * (pull[k] ?? 0);
    return value + by;
  });
  return { mean, covariance };
}

function turnedRing(p: Float64Array, told: Float64Array, n: number): Prior {
  // Waves stand in pairs, from the twofold on: every second pair is of an odd fold.
  const sign = (i: number): number =>
    i >= FIRST_WAVE && i < FIRST_WAVE + WAVES && Math.floor((i - FIRST_WAVE) / 2) % 2 === 1 ? -1 : 1;
  const mean = p.map((value, i) => sign(i) * value);
  const turned = told.map((value, i) => sign(Math.floor(i / n)) * sign(i % n) * value);
  return { mean, precision: loosened(turned, n) };
}

/** The precision once the centre may lie elsewhere by σ: (C + σ²)⁻¹ on both its axes. */
function loosened(precision: Float64Array, n: number): Float64Array {
  const covariance = invertSymmetric(precision, n);
  if (covariance === null) return precision;
  for (const i of [unknownAt.centreX, unknownAt.centreY])
    covariance[i * n + i] = (covariance[i * n + i] ?? 0) + RING_ASIDE ** 2;
  return invertSymmetric(covariance, n) ?? precision;
}
