/** How far a part is turned, and its axes skewed, against the directions that sweeps were prompted toward. */
import type { Sweep } from '../capture/evidence/find-sweep.ts';
import type { StickTrack } from '../capture/evidence/track.ts';
import { angleOf } from '../geometry/angle.ts';
import { meanDirection } from '../geometry/mean-direction.ts';
import { combineUncertainty, type UncertaintyPart } from '../numeric/combined-uncertainty.ts';
import { studentT } from '../numeric/student-t.ts';
import type { Pair } from '../pad/stick.ts';
import { sweepAngle } from './sweep-angle.ts';
import type { TravelMeasure } from './travel-measure.ts';

/** A hand aims within about ±3° of a prompt, all its sweeps alike: common practice. Rectangular, so u = 3°/√3. */
const AIM_DEGREES = 3;
/** Farther from square the axes are swapped or inverted, and there is no turn to speak of. */
const MOST_SKEW = 45;

type PartTurn = Pick<TravelMeasure, 'turnAngle' | 'turnU95' | 'skewAngle' | 'skewU95' | 'seenAngle'>;

/**
 * Each sweep's own direction less the prompted one: e. Sweeps toward 0 and 180° give e_x, those toward 90 and 270° e_y, as
 * means. A part turned counter-clockwise sees every push turned clockwise: turn = −(e_x + e_y)/2, skew = e_y − e_x, degrees.
 * Uncertainty: scatter of the sweeps about those means, pooled, and for the turn the hand's aim; k by Welch and
 * Satterthwaite (JCGM 100, G.4.1). A turn below its uncertainty cannot be told from the hand. Null without sweeps along both
 * axes; the turn also where axes are swapped or inverted, which `seenAngle` shows. `half` are half travels, counts, in
 * whose shares directions are taken, so that unequal gains turn nothing.
 */
export function partTurn(track: StickTrack, sweeps: readonly Sweep[], half: Pair): PartTurn {
  const errors = { x: [] as number[], y: [] as number[] };
  for (const sweep of sweeps) {
    const seen = sweepAngle(track, sweep, half);
    const isAlongX = Math.abs(Math.cos((sweep.toward * Math.PI) / 180)) >= Math.SQRT1_2;
    if (seen !== null) errors[isAlongX ? 'x' : 'y'].push(angleDifference(seen, sweep.toward));
  }
  const x = meanDirection(errors.x)?.angle ?? null;
  const y = meanDirection(errors.y)?.angle ?? null;
  const seenAngle = { x, y: y === null ? null : angleOf(Math.cos(radians(y + 90)), Math.sin(radians(y + 90))) };
  if (x === null || y === null) return { turnAngle: null, turnU95: null, skewAngle: null, skewU95: null, seenAngle };
  const skewAngle = angleDifference(y, x);
  const scatter = scatterOf(errors, { x, y });
  const skewU95 = expanded([scatter]);
  if (Math.abs(skewAngle) > MOST_SKEW) return { turnAngle: null, turnU95: null, skewAngle, skewU95, seenAngle };
  const turnAngle = -angleDifference(x + skewAngle / 2, 0) + 0;
  const aim = { value: AIM_DEGREES / Math.sqrt(3), degrees: Number.POSITIVE_INFINITY };
  const turnU95 = expanded([{ ...scatter, value: scatter.value / 2 }, aim]);
  return { turnAngle, turnU95, skewAngle, skewU95, seenAngle };
}

/** Standard uncertainty of e_y − e_x; without a sweep to spare the aim of a single sweep stands for its scatter. */
function scatterOf(
  errors: { readonly x: readonly number[]; readonly y: readonly number[] },
  means: Pair,
): UncertaintyPart {
  const degrees = errors.x.length + errors.y.length - 2;
  const squares = (['x', 'y'] as const)
    .flatMap((axis) => errors[axis].map((error) => angleDifference(error, means[axis]) ** 2))
    .reduce((sum, square) => sum + square, 0);
  const variance = degrees === 0 ? AIM_DEGREES ** 2 : squares / degrees;
  const value = Math.sqrt(variance / errors.x.length + variance / errors.y.length);
  return { value, degrees: degrees === 0 ? Number.POSITIVE_INFINITY : degrees };
}

function expanded(parts: readonly UncertaintyPart[]): number {
  const combined = combineUncertainty(parts);
  return studentT(0.975, combined.degrees) * combined.value;
}

/** Signed degrees from one angle to another, in (−180, 180]. */
function angleDifference(to: number, from: number): number {
  const wrapped = angleOf(Math.cos(radians(to - from)), Math.sin(radians(to - from)));
  return wrapped > 180 ? wrapped - 360 : wrapped;
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
