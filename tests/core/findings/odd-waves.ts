/**
 * What a round gate of 72 directions tells of its centre and of two unlike sides, worked out by hand in waves. A centre at c moves
 * the rim by −c·cos θ; a plus side longer by a share d than the minus side by −½·d·|cos θ|·cos θ, whose waves are
 * b_k = −8·sin(kπ/2)/(πk(k² − 4)), k odd. A moulded gate has waves of 0.3 % itself in the folds 2 to 8; of those beyond only the
 * readings' own noise hides what a side does.
 */
import type { Outline } from '../../../core/findings/outline/fit-outline.ts';

const WAVE = 0.003;
const DIRECTIONS = 72;

/** Of |cos θ|·cos θ. */
export function sideWave(fold: number): number {
  return (-8 * Math.sin((fold * Math.PI) / 2)) / (Math.PI * fold * (fold ** 2 - 4));
}

/** Variances of the readings' first wave and of d, where each rim point is known to σ. */
export function spreadOf(sigma: number): Spread {
  const own = (2 * sigma ** 2) / DIRECTIONS;
  let known = 0;
  for (let fold = 3; fold < DIRECTIONS / 2; fold += 2)
    known += (sideWave(fold) / 2) ** 2 / (own + (fold <= 8 ? WAVE ** 2 : 0));
  return { first: own, side: 1 / known };
}

/** Variances of what a rim tells: of its first wave, centre + ½·b₁·d, and of d. */
export interface Spread {
  readonly first: number;
  readonly side: number;
}

/** Posterior of centre and d, both seen at v, where they are known beforehand to the σ of `prior`. */
export function posterior(
  spread: number | Spread,
  rest: number,
  prior: { readonly centre: number; readonly side: number },
  v: readonly [number, number],
) {
  const { first, side } = typeof spread === 'number' ? spreadOf(spread) : spread;
  const half = sideWave(1) / 2;
  // P + M, M of (centre, d): the first wave leaves centre + half · d only.
  const a = prior.centre ** 2 + first + half ** 2 * side + rest ** 2;
  const b = -half * side;
  const d = prior.side ** 2 + side;
  const det = a * d - b * b;
  return {
    centre: (prior.centre ** 2 * (d * v[0] - b * v[1])) / det,
    side: (prior.side ** 2 * (a * v[1] - b * v[0])) / det,
    centreU: 2 * Math.sqrt(prior.centre ** 2 - (prior.centre ** 4 * d) / det),
    sideU: 2 * Math.sqrt(prior.side ** 2 - (prior.side ** 4 * a) / det),
    logEvidence: -(Math.log(det) + (d * v[0] ** 2 - 2 * b * v[0] * v[1] + a * v[1] ** 2) / det) / 2,
  };
}

/** Of a sound part, and of a fault. */
export const SOUND = { centre: 0.0052, side: 0.005 } as const;
export const FAULTY = { centre: 0.08, side: 0.12 } as const;
/** An outline that fits to rounding is known to so much. */
export const ROUNDING = 1e-5;

/** An outline that says (centre x, centre y, d of x, d of y) and is known to a spread along either axis. */
export function outlineSeen(v: readonly [number, number, number, number], { first, side }: Spread): Outline {
  const spans = { xPlus: 1000 * Math.exp(v[2]), yPlus: 1000 * Math.exp(v[3]), xMinus: 1000, yMinus: 1000 };
  const half = sideWave(1) / 2;
  // The plus side carries all that is not known of d.
  const along = (centre = 0, plus = 0): number => centre ** 2 * first + (plus - half * centre) ** 2 * side;
  return {
    sides: 0,
    value: { lean: 0, bend: 0, corner: 0, rounding: 0, ...spans, centreX: v[0], centreY: v[1] },
    residual: 0,
    points: 72,
    variance: ({ centreX, centreY, xPlus = 0, yPlus = 0 }) =>
      along(centreX, xPlus * spans.xPlus) + along(centreY, yPlus * spans.yPlus),
  };
}
