/** Least squares of a gate's outline with what is known of moulded gates beforehand. */
import type { Sides } from './gate-shape.ts';
import { beyondUsual, mouldedGate, type Prior } from './gate-prior.ts';
import { FIRST_WAVE, lookAt, ROUND, SPANS, WAVES, type OutlinePoint, type RimPoint } from './outline-model.ts';
import { invertSymmetric } from './solve-normal.ts';

export interface OutlineFit {
  readonly sides: Sides;
  readonly p: Float64Array;
  readonly covariance: Float64Array;
  /** How far each point lies outside of the fitted gate, a share of its radius. */
  readonly outside: Float64Array;
  readonly residual: number;
  readonly points: number;
  /** Σ (wave/τ)² + (bend/τ)², what waves and law are beyond those of a usual gate and part. */
  readonly unusual: number;
}

const LEAST_SIGMA = 1e-5;
const ALONG = 1e-5;
/** Where readings hardly grow with the tilt any more nothing is told. */
const LEAST_ALONG = 0.1;
const STEPS = 14;
/** No step moves a share by more, so that a corner found late does not throw the rest off. */
const LONGEST = 0.15;

/**
 * Minimises Σ (outside/σ)² + (p − m)ᵀP(p − m), m and P of the prior (Gauss and Newton; the waves by their own slopes, the others by a numeric one), σ
 * taken from what is left over; the covariance is that of the posterior, so that an unknown which a wave could pretend carries
 * the wave's spread. Null where it does not settle on numbers that can be. Source: generalised least squares with prior
 * knowledge, e.g. Tarantola, Inverse Problem Theory, 2005, 3.2 (from memory).
 */
export function leastPenalty(
  points: readonly RimPoint[],
  sides: Sides,
  start: Float64Array,
  prior: Prior = mouldedGate(start.length),
): OutlineFit | null {
  const n = start.length;
  const p = Float64Array.from(start);
  let sigma = 0.01;
  let inverse: Float64Array | null = null;
  for (let step = 0; step < STEPS; step += 1) {
    const { matrix, right } = normalEquations(points, sides, p, sigma);
    for (let i = 0; i < n; i += 1)
      for (let k = 0; k < n; k += 1) {
        const weight = prior.precision[i * n + k] ?? 0;
        matrix[i * n + k] = (matrix[i * n + k] ?? 0) + weight;
        right[i] = (right[i] ?? 0) + weight * ((p[k] ?? 0) - (prior.mean[k] ?? 0));
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
    sigma = Math.max(LEAST_SIGMA, Math.sqrt(squaresOf(left) / Math.max(1, points.length - effective(inverse, prior))));
    if (moved < 1e-7 && Math.abs(sigma - before) <= 1e-3 * before) break;
  }
  if (inverse === null) return null;
  const outside = outsideOf(points, sides, p);
  const squares = squaresOf(outside);
  return {
    sides,
    p,
    covariance: inverse,
    outside,
    residual: Math.sqrt(squares / points.length),
    points: points.length,
    unusual: beyondUsual(p),
  };
}

/** Unknowns that the points pay for: all, less what the prior holds, n − tr(prior precision · posterior covariance). */
function effective(inverse: Float64Array, { precision }: Prior): number {
  return Math.sqrt(inverse.length) - precision.reduce((sum, weight, i) => sum + weight * (inverse[i] ?? 0), 0);
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
    const along = lookAlong(p, sides, dx, dy, seen);
    for (let i = 0; i < n; i += 1) {
      if (i >= FIRST_WAVE && i < ROUND) {
        slope[i] = (seen.waveSlopes[i - FIRST_WAVE] ?? Number.NaN) / along;
        continue;
      }
      const by = 1e-6 * scaleOf(p, i);
      moved[i] = (p[i] ?? 0) + by;
      lookAlong(moved, sides, dx, dy, beside);
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
    lookAlong(p, sides, dx, dy, seen);
    return seen.outside;
  });
}

/**
 * As `lookAt`, but how far outside the reading itself lies: outside/(∂outside/∂ln r), which is given back. A law undone makes noise
 * larger or smaller than it was read, and one that bends more than it does would seem to leave less over.
 */
function lookAlong(p: Float64Array, sides: Sides, dx: number, dy: number, into: OutlinePoint): number {
  lookAt(p, sides, dx * (1 + ALONG), dy * (1 + ALONG), into);
  const beyond = into.outside;
  lookAt(p, sides, dx, dy, into);
  const along = Math.max(LEAST_ALONG, (beyond - into.outside) / ALONG);
  into.outside /= along;
  return along;
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
