/** Fits the model of a gate behind two sensors to the rim points of a stick. */
import { gateShape, type Sides } from './gate-shape.ts';
import type { Prior } from './gate-prior.ts';
import type { KnownGate } from './known-gate.ts';
import { leastPenalty, type OutlineFit } from './iterate-outline.ts';
import { ROUND, SIDED, unknownAt, type RimPoint, type Unknown } from './outline-model.ts';

export interface Outline {
  /** How many straight sides the gate has; 0 is a round one. */
  readonly sides: Sides;
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
/** Points further off than this many times the usual residual are readings gone astray. */
const ASTRAY = 5;
/** A four-sided gate falls from a corner by 15 % in 10°; from one direction to its neighbours no gate leaps so far. */
const LEAP = 0.16;
/** A round gate that leaves over no more than noise, with waves no larger than moulding makes them, needs no corners: cost beyond the points. */
const ROUND_COST = 20;
/** What corners must save to be believed: their two unknowns, and the choice among seven. */
const CORNERS_SAVE = 30;
/** A gate has more to it than waves and corners; nothing finer than this is asked of either shape. */
const LEAST_ROUGHNESS = 0.001;
const START_ROUNDING = 0.3;

/**
 * Least squares with the gate's waves held by what moulding makes of them (see `leastPenalty`); once more without points that
 * went astray. A round gate unless four, six or eight sides explain it far better. Null with fewer than 36 points, with `mostGap`
 * degrees of directions or more without one, or where the points do not determine the unknowns.
 */
export function fitOutline(all: readonly RimPoint[], options: OutlineOptions = {}): Outline | null {
  const fit = bestFit(all, options);
  return fit === null ? null : outlineOf(fit);
}

export interface OutlineOptions {
  /** Degrees. */
  readonly mostGap?: number | undefined;
  /** What another survey told of this gate; its shape is then known, too. */
  readonly known?: KnownGate | null | undefined;
}

/** The fit itself; null as in `fitOutline`. */
export function bestFit(
  all: readonly RimPoint[],
  { mostGap = WIDEST_GAP, known = null }: OutlineOptions = {},
): OutlineFit | null {
  const points = withoutStrays(all);
  if (points.length < LEAST_POINTS || widestGap(points) >= mostGap) return null;
  if (known !== null) return fitGate(points, known.sides, known.prior);
  const sigma = Math.max(LEAST_ROUGHNESS, roughness(points));
  const costOf = (fit: OutlineFit): number => fit.points * (fit.residual / sigma) ** 2 + fit.unusual;
  const round = fitGate(points, 0);
  const roundCost = round === null ? Number.POSITIVE_INFINITY : costOf(round);
  if (roundCost <= points.length + ROUND_COST) return round;
  const sided = ([8, 6, 4] as const)
    .map((sides) => fitGate(points, sides))
    .filter((fit) => fit !== null)
    .toSorted((a, b) => costOf(a) - costOf(b))[0];
  return sided !== undefined && costOf(sided) < roundCost - CORNERS_SAVE ? sided : round;
}

/**
 * σ of a point as a share of its radius, whatever the gate's shape: from fourth differences of neighbours, which do not see the curve
 * of a side and whose variance is seventy times that of one point; from their lower quartile, 0.3186 σ of normal scatter, as every
 * second one sees a corner of an eight-sided gate.
 */
function roughness(points: readonly RimPoint[]): number {
  const radii = points.map(({ dx, dy }) => Math.hypot(dx, dy));
  const at = (i: number): number => radii[(i + radii.length) % radii.length] ?? Number.NaN;
  const fourth = radii
    .map((radius, i) => Math.abs(at(i - 2) - 4 * at(i - 1) + 6 * radius - 4 * at(i + 1) + at(i + 2)) / radius)
    .toSorted((a, b) => a - b);
  return (fourth[Math.floor(fourth.length / 4)] ?? Number.NaN) / 0.3186 / Math.sqrt(70);
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

function fitGate(points: readonly RimPoint[], sides: Sides, prior?: Prior): OutlineFit | null {
  const first = leastPenalty(points, sides, startOf(points, sides), prior);
  if (first === null) return null;
  const usual = medianAbsolute(first.outside);
  const kept = points.filter((_, i) => Math.abs(first.outside[i] ?? Number.NaN) <= ASTRAY * 1.4826 * usual + 1e-9);
  if (kept.length === points.length || kept.length < LEAST_POINTS) return first;
  return leastPenalty(kept, sides, first.p, prior) ?? first;
}

/** Spans from the extents; a corner stands where the wave of as many folds is highest. */
function startOf(points: readonly RimPoint[], sides: Sides): Float64Array {
  const halfX = (Math.max(...points.map(({ dx }) => dx)) - Math.min(...points.map(({ dx }) => dx))) / 2;
  const halfY = (Math.max(...points.map(({ dy }) => dy)) - Math.min(...points.map(({ dy }) => dy))) / 2;
  const p = new Float64Array(sides === 0 ? ROUND : SIDED);
  if (sides === 0) {
    p.set([halfX, halfX, halfY, halfY]);
    return p;
  }
  const corner = cornerOf(points, halfX, halfY, sides);
  const [shareX, shareY] = [0, Math.PI / 2].map((axis) => extentOf(sides, corner - axis));
  const [x, y] = [halfX / (shareX ?? 1), halfY / (shareY ?? 1)];
  p.set([x, x, y, y]);
  p[unknownAt.corner] = corner;
  p[unknownAt.rounding] = START_ROUNDING;
  return p;
}

/** Angle of the phase of Σ (r − r̄)·e^(−inθ): radians from +x to a corner. */
function cornerOf(points: readonly RimPoint[], halfX: number, halfY: number, sides: number): number {
  const places = points.map(({ dx, dy }) => ({ x: dx / halfX, y: dy / halfY }));
  const mean = places.reduce((sum, { x, y }) => sum + Math.hypot(x, y), 0) / places.length;
  let [c, s] = [0, 0];
  for (const { x, y } of places) {
    const turn = sides * Math.atan2(y, x);
    c += (Math.hypot(x, y) - mean) * Math.cos(turn);
    s += (Math.hypot(x, y) - mean) * Math.sin(turn);
  }
  return Math.atan2(s, c) / sides;
}

/** How far a gate whose corner stands at an angle reaches along an axis. */
function extentOf(sides: Sides, corner: number): number {
  let most = 0;
  for (let degrees = -45; degrees <= 45; degrees += 1) {
    const angle = (degrees * Math.PI) / 180;
    most = Math.max(most, gateShape(sides, START_ROUNDING, angle - corner) * Math.cos(angle));
  }
  return most;
}

function outlineOf({ p, sides, covariance, residual, points }: OutlineFit): Outline {
  const names = Object.keys(unknownAt) as Unknown[];
  const n = p.length;
  return {
    sides,
    value: Object.fromEntries(names.map((name) => [name, p[unknownAt[name]] ?? 0])) as Record<Unknown, number>,
    residual,
    points,
    variance(weights) {
      const used = names.flatMap((name) => {
        const weight = weights[name] ?? 0;
        return weight === 0 || unknownAt[name] >= n ? [] : [{ at: unknownAt[name], weight }];
      });
      let sum = 0;
      for (const a of used) for (const b of used) sum += a.weight * b.weight * (covariance[a.at * n + b.at] ?? 0);
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

function medianAbsolute(values: Float64Array): number {
  const sorted = values.map(Math.abs).sort();
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
