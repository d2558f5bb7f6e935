/** Fits the model of a gate behind two sensors to the rim points of a stick. */
import { EIGHT_SIDED, outsideBy, ROUND, unknowns, type Unknown } from './outline-model.ts';
import { invertSymmetric } from './solve-normal.ts';

export interface RimPoint {
  /** Degrees. */
  readonly angle: number;
  /** Counts from the rest, y up. */
  readonly dx: number;
  readonly dy: number;
}

export interface Outline {
  readonly gate: 'round' | 'eightSided';
  readonly value: Readonly<Record<Unknown, number>>;
  /** Variance of any sum of unknowns with the weights given; unknowns that are not named weigh nothing. */
  variance(weights: Readonly<Partial<Record<Unknown, number>>>): number;
  /** Root mean square of what the model leaves over, as a share of the gate's radius. */
  readonly residual: number;
  readonly points: number;
}

/** Points below which, or a gap of directions from which on, the spans of some side are guesses. */
const LEAST_POINTS = 36;
const WIDEST_GAP = 45;
const STEPS = 12;
/** A round gate leaves less over than this; eight corners leave a good 2 %. */
const ROUND_RESIDUAL = 0.008;
/** Points further off than this many times the usual residual are readings gone astray. */
const ASTRAY = 5;
/** An eight-sided gate falls from a corner by 4 % in 10°; from one direction to its neighbours no gate leaps so far. */
const LEAP = 0.08;

/**
 * Least squares of `outsideBy` over the points (Gauss and Newton with a numeric derivative); once more without points that
 * went astray. A round gate unless it leaves over more than 0.8 % and eight sides leave less than half as much. Null with
 * fewer than 36 points, with `mostGap` degrees of directions or more without one, or where the points do not determine the unknowns.
 */
export function fitOutline(all: readonly RimPoint[], mostGap = WIDEST_GAP): Outline | null {
  const points = withoutStrays(all);
  if (points.length < LEAST_POINTS || widestGap(points) >= mostGap) return null;
  const round = fitGate(points, ROUND, 0);
  if (round !== null && round.residual <= ROUND_RESIDUAL) return round;
  const sided = [0, Math.PI / 8]
    .map((corner) => fitGate(points, EIGHT_SIDED, corner))
    .filter((fit) => fit !== null)
    .toSorted((a, b) => a.residual - b.residual)[0];
  if (sided === undefined) return round;
  return round === null || sided.residual < round.residual / 2 ? sided : round;
}

/** Without points whose radius leaps away from those of their neighbours, by more than any corner of a gate does. */
function withoutStrays(points: readonly RimPoint[]): readonly RimPoint[] {
  const radii = points.map(({ dx, dy }) => Math.hypot(dx, dy));
  return points.filter((_, i) => {
    const near = [-2, -1, 0, 1, 2].map((k) => radii[(i + k + radii.length) % radii.length] ?? Number.NaN);
    const usual = near.toSorted((a, b) => a - b)[2] ?? Number.NaN;
    return Math.abs((radii[i] ?? Number.NaN) - usual) <= LEAP * usual;
  });
}

function fitGate(points: readonly RimPoint[], size: number, corner: number): Outline | null {
  const first = iterate(points, startOf(points, size, corner));
  if (first === null) return null;
  const usual = medianAbsolute(points.map(({ dx, dy }) => outsideBy(first.p, dx, dy)));
  const kept = points.filter(({ dx, dy }) => Math.abs(outsideBy(first.p, dx, dy)) <= ASTRAY * 1.4826 * usual + 1e-9);
  const fit = kept.length === points.length || kept.length < LEAST_POINTS ? first : (iterate(kept, first.p) ?? first);
  return outlineOf(fit, size);
}

interface Fit {
  readonly p: Float64Array;
  readonly covariance: Float64Array;
  readonly residual: number;
  readonly points: number;
}

function iterate(points: readonly RimPoint[], start: Float64Array): Fit | null {
  const n = start.length;
  const p = Float64Array.from(start);
  let inverse: Float64Array | null = null;
  for (let step = 0; step < STEPS; step += 1) {
    const { matrix, right } = normalEquations(points, p);
    inverse = invertSymmetric(matrix, n);
    if (inverse === null) return null;
    let moved = 0;
    for (let i = 0; i < n; i += 1) {
      let by = 0;
      for (let k = 0; k < n; k += 1) by -= (inverse[i * n + k] ?? 0) * (right[k] ?? 0);
      p[i] = (p[i] ?? 0) + by;
      moved = Math.max(moved, Math.abs(by) / scaleOf(p, i));
    }
    if (!p.every(Number.isFinite) || p.subarray(0, 4).some((span) => span <= 0)) return null;
    if (moved < 1e-9) break;
  }
  if (inverse === null) return null;
  const squares = points.reduce((sum, { dx, dy }) => sum + outsideBy(p, dx, dy) ** 2, 0);
  const variance = squares / (points.length - n);
  return {
    p,
    covariance: inverse.map((one) => one * variance),
    residual: Math.sqrt(squares / points.length),
    points: points.length,
  };
}

function normalEquations(points: readonly RimPoint[], p: Float64Array) {
  const n = p.length;
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  const slope = new Float64Array(n);
  const moved = Float64Array.from(p);
  for (const { dx, dy } of points) {
    const outside = outsideBy(p, dx, dy);
    for (let i = 0; i < n; i += 1) {
      const by = 1e-6 * scaleOf(p, i);
      moved[i] = (p[i] ?? 0) + by;
      slope[i] = (outsideBy(moved, dx, dy) - outside) / by;
      moved[i] = p[i] ?? 0;
    }
    for (let i = 0; i < n; i += 1) {
      right[i] = (right[i] ?? 0) + (slope[i] ?? 0) * outside;
      for (let k = 0; k <= i; k += 1) matrix[i * n + k] = (matrix[i * n + k] ?? 0) + (slope[i] ?? 0) * (slope[k] ?? 0);
    }
  }
  for (let i = 0; i < n; i += 1) for (let k = i + 1; k < n; k += 1) matrix[i * n + k] = matrix[k * n + i] ?? 0;
  return { matrix, right };
}

/** Spans are counts, everything else a share. */
function scaleOf(p: Float64Array, index: number): number {
  return index < 4 ? Math.abs(p[index] ?? 1) : 1;
}

function startOf(points: readonly RimPoint[], size: number, corner: number): Float64Array {
  const spanX = (Math.max(...points.map(({ dx }) => dx)) - Math.min(...points.map(({ dx }) => dx))) / 2;
  const spanY = (Math.max(...points.map(({ dy }) => dy)) - Math.min(...points.map(({ dy }) => dy))) / 2;
  return Float64Array.from([spanX, spanX, spanY, spanY, 0, 0, 0, 0, corner].slice(0, size));
}

function outlineOf({ p, covariance, residual, points }: Fit, size: number): Outline {
  const value = Object.fromEntries(unknowns.map((name, i) => [name, p[i] ?? 0])) as Record<Unknown, number>;
  return {
    gate: size === ROUND ? 'round' : 'eightSided',
    value,
    residual,
    points,
    variance(weights) {
      const w = unknowns.map((name) => weights[name] ?? 0);
      let sum = 0;
      for (let i = 0; i < size; i += 1)
        for (let k = 0; k < size; k += 1) sum += (w[i] ?? 0) * (w[k] ?? 0) * (covariance[i * size + k] ?? 0);
      return Math.max(0, sum);
    },
  };
}

function widestGap(points: readonly RimPoint[]): number {
  const angles = points.map(({ angle }) => angle).toSorted((a, b) => a - b);
  return angles.reduce((widest, angle, i) => {
    const next = angles[i + 1] ?? (angles[0] ?? 0) + 360;
    return Math.max(widest, next - angle);
  }, 0);
}

function medianAbsolute(values: readonly number[]): number {
  const sorted = values.map(Math.abs).toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
