/** Least squares of a gate's outline with what is known of moulded gates beforehand. */
import type { Sides } from './gate-shape.ts';
import {
  FIRST_WAVE,
  lookAt,
  ROUND,
  SPANS,
  unknownAt,
  WAVES,
  type OutlinePoint,
  type RimPoint,
} from './outline-model.ts';
import { invertSymmetric } from './solve-normal.ts';

export interface OutlineFit {
  readonly sides: Sides;
  readonly p: Float64Array;
  readonly covariance: Float64Array;
  /** How far each point lies outside of the fitted gate, a share of its radius. */
  readonly outside: Float64Array;
  readonly residual: number;
  readonly points: number;
  /** Σ (wave/τ)², what the waves are beyond those of a usual gate. */
  readonly penalty: number;
  /** Σ (outside/σ₀)² + penalty with one σ₀ for all shapes, so that they can be compared. */
  readonly cost: number;
}

/** Standard deviation of the cosine and of the sine of each wave of a moulded gate, a share of its radius: common practice. */
export const WAVE_SIGMA = 0.003;
/** Wide: it only holds the unknown where the waves would hide it. */
const BEND_SIGMA = 0.1;
const ROUNDING_SIGMA = 0.3;
/** σ of a rim point where shapes are compared. */
const COMPARE_SIGMA = 0.002;
const LEAST_SIGMA = 1e-5;
const STEPS = 14;
/** No step moves a share by more, so that a corner found late does not throw the rest off. */
const LONGEST = 0.15;

/**
 * Minimises Σ (outside/σ)² + Σ (wave/τ)² (Gauss and Newton; the waves by their own slopes, the others by a numeric one), σ
 * taken from what is left over; the covariance is that of the posterior, so that an unknown which a wave could pretend carries
 * the wave's spread. Null where it does not settle on numbers that can be. Source: generalised least squares with prior
 * knowledge, e.g. Tarantola, Inverse Problem Theory, 2005, 3.2 (from memory).
 */
export function leastPenalty(points: readonly RimPoint[], sides: Sides, start: Float64Array): OutlineFit | null {
  const n = start.length;
  const p = Float64Array.from(start);
  const held = priorsOf(n);
  let sigma = 0.01;
  let inverse: Float64Array | null = null;
  for (let step = 0; step < STEPS; step += 1) {
    const { matrix, right } = normalEquations(points, sides, p, sigma);
    for (let i = 0; i < n; i += 1) {
      const { weight, about } = held[i] ?? FREE;
      matrix[i * n + i] = (matrix[i * n + i] ?? 0) + weight;
      right[i] = (right[i] ?? 0) + weight * ((p[i] ?? 0) - about);
    }
    inverse = invertSymmetric(matrix, n);
    if (inverse === null) return null;
    let moved = 0;
    for (let i = 0; i < n; i += 1) {
      let by = 0;
      for (let k = 0; k < n; k += 1) by -= (inverse[i * n + k] ?? 0) * (right[k] ?? 0);
      const most = LONGEST * scaleOf(p, i);
      p[i] = (p[i] ?? 0) + Math.max(-most, Math.min(most, by));
      moved = Math.max(moved, Math.abs(by) / scaleOf(p, i));
    }
    if (!p.every(Number.isFinite) || p.subarray(0, SPANS).some((span) => span <= 0)) return null;
    const left = outsideOf(points, sides, p);
    const before = sigma;
    sigma = Math.max(LEAST_SIGMA, Math.sqrt(squaresOf(left) / Math.max(1, points.length - effective(inverse, held))));
    if (moved < 1e-7 && Math.abs(sigma - before) <= 1e-3 * before) break;
  }
  if (inverse === null) return null;
  const outside = outsideOf(points, sides, p);
  const squares = squaresOf(outside);
  let penalty = 0;
  for (let i = FIRST_WAVE; i < ROUND; i += 1) penalty += ((p[i] ?? 0) / WAVE_SIGMA) ** 2;
  return {
    sides,
    p,
    covariance: inverse,
    outside,
    residual: Math.sqrt(squares / points.length),
    points: points.length,
    penalty,
    cost: squares / COMPARE_SIGMA ** 2 + penalty,
  };
}

interface Prior {
  readonly weight: number;
  readonly about: number;
}
const FREE: Prior = { weight: 0, about: 0 };

function priorsOf(n: number): Prior[] {
  return Array.from({ length: n }, (_, i) => {
    if (i >= FIRST_WAVE && i < ROUND) return { weight: 1 / WAVE_SIGMA ** 2, about: 0 };
    if (i === unknownAt.bend) return { weight: 1 / BEND_SIGMA ** 2, about: 0 };
    if (i === unknownAt.rounding) return { weight: 1 / ROUNDING_SIGMA ** 2, about: 0 };
    return FREE;
  });
}

/** Unknowns that the points pay for: all, less what the priors hold, n − Σ prior weight · posterior variance. */
function effective(inverse: Float64Array, held: readonly Prior[]): number {
  const n = held.length;
  return n - held.reduce((sum, { weight }, i) => sum + weight * (inverse[i * n + i] ?? 0), 0);
}

function normalEquations(points: readonly RimPoint[], sides: Sides, p: Float64Array, sigma: number) {
  const n = p.length;
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  const slope = new Float64Array(n);
  const moved = Float64Array.from(p);
  const seen = emptyPoint();
  const beside = emptyPoint();
  const weight = 1 / sigma ** 2;
  for (const { dx, dy } of points) {
    lookAt(p, sides, dx, dy, seen);
    for (let i = 0; i < n; i += 1) {
      if (i >= FIRST_WAVE && i < ROUND) {
        slope[i] = seen.waveSlopes[i - FIRST_WAVE] ?? Number.NaN;
        continue;
      }
      const by = 1e-6 * scaleOf(p, i);
      moved[i] = (p[i] ?? 0) + by;
      lookAt(moved, sides, dx, dy, beside);
      slope[i] = (beside.outside - seen.outside) / by;
      moved[i] = p[i] ?? 0;
    }
    for (let i = 0; i < n; i += 1) {
      const pull = weight * (slope[i] ?? 0);
      right[i] = (right[i] ?? 0) + pull * seen.outside;
      for (let k = 0; k <= i; k += 1) matrix[i * n + k] = (matrix[i * n + k] ?? 0) + pull * (slope[k] ?? 0);
    }
  }
  for (let i = 0; i < n; i += 1) for (let k = i + 1; k < n; k += 1) matrix[i * n + k] = matrix[k * n + i] ?? 0;
  return { matrix, right };
}

function outsideOf(points: readonly RimPoint[], sides: Sides, p: Float64Array): Float64Array {
  const seen = emptyPoint();
  return Float64Array.from(points, ({ dx, dy }) => {
    lookAt(p, sides, dx, dy, seen);
    return seen.outside;
  });
}

function squaresOf(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}

function emptyPoint(): OutlinePoint {
  return { outside: Number.NaN, waveSlopes: new Float64Array(WAVES) };
}

/** Spans are counts, everything else a share. */
function scaleOf(p: Float64Array, index: number): number {
  return index < SPANS ? Math.abs(p[index] ?? 1) : 1;
}
