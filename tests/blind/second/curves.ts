/** The half-visible sizes of faults, from their detection curves on each kind of pad. */
import { isMissed, sayAsked, sayCount } from '../demand.ts';
import { justVisible, type CurvePoint } from '../just-visible.ts';
import type { Miss } from '../miss.ts';
import { takeCurve } from '../take-curve.ts';
import { curveWishes } from './cells.ts';
import { HALF_SEEN } from './demands.ts';
import type { Wish } from './draw-unit.ts';
import { isNamed } from './fault-named.ts';
import { faults, type FaultName } from './faults.ts';
import type { Judged } from './judge-draw.ts';
import { whyNotGated } from './not-gated.ts';
import type { PadKind } from './pad-plan.ts';
import type { FaultOnPad } from './plan.ts';
import { gradedSizes } from './sizes.ts';
import type { VisibleSizes } from './visible-sizes.ts';

export interface Curve {
  readonly name: FaultName;
  readonly pad: PadKind;
  readonly points: readonly CurvePoint[];
  readonly halfSeen: number | null;
  /** The wanted size, and what was seen of it; null where none is wanted. */
  readonly wanted: CurvePoint | null;
}

type Judge = (wishes: readonly Wish[]) => Promise<Judged[]>;

/** One after the other, each said as it is taken; none of faults without degrees. */
export async function takeCurves(
  of: readonly FaultOnPad[],
  units: number,
  seed: number,
  judge: Judge,
): Promise<Curve[]> {
  const curves: Curve[] = [];
  for (const one of of) {
    const curve = await curveOf(one, units, seed, judge);
    if (curve === null) continue;
    console.log(sayCurve(curve));
    curves.push(curve);
  }
  return curves;
}

async function curveOf({ name, pad }: FaultOnPad, units: number, seed: number, judge: Judge): Promise<Curve | null> {
  const graded = gradedSizes(name);
  if (graded === null) return null;
  const points = await takeCurve(graded.curve, graded.start, async (size) => {
    const judged = await judge(curveWishes({ name, size }, pad, seed, units));
    return { found: judged.filter((one) => isNamed(one, 0, 2)).length, of: judged.length };
  });
  const wanted = points.find(({ size }) => size === graded.wanted) ?? null;
  return { name, pad, points, halfSeen: justVisible(points), wanted };
}

function sayCurve({ name, pad, points, halfSeen }: Curve): string {
  const shares = points.map(({ size, found, of }) => `${size}: ${Math.round((100 * found) / of)} %`).join('  ');
  const half = halfSeen === null ? 'no size at one half,' : `half visible at ${halfSeen.toPrecision(3)}`;
  return `${pad.padEnd(10)} curve ${name}: ${half} ${faults[name].unit}    ${shares}`;
}

/** A half-visible size that is clearly larger than the wanted one: fewer than half are seen there. */
export function curveMisses({ name, pad, wanted, halfSeen }: Curve): Miss[] {
  const where = `${pad} curve ${name}`;
  const { unit } = faults[name];
  const known = whyNotGated({ part: 'curve', name, pad }, HALF_SEEN.what);
  if (wanted !== null && isMissed(HALF_SEEN, wanted)) {
    const half =
      halfSeen === null ? 'It is half visible at no size' : `It is half visible at ${halfSeen.toPrecision(3)}`;
    return [
      {
        where,
        says: `${half} ${unit}; ${wanted.size} was asked for: ${sayCount(HALF_SEEN, wanted)}, ${sayAsked(HALF_SEEN)} was asked for.`,
        known,
      },
    ];
  }
  return halfSeen === null ? [{ where, says: 'Its curve does not cross one half.', known }] : [];
}

export function sizesOf(curves: readonly Curve[]): VisibleSizes {
  const pads = [...new Set(curves.map(({ pad }) => pad))];
  return Object.fromEntries(
    pads.map((pad) => {
      const own = curves.filter((curve) => curve.pad === pad);
      return [pad, Object.fromEntries(own.map(({ name, halfSeen }) => [name, halfSeen]))];
    }),
  );
}
