/** How far a mapping is from fitting the stick as it was measured. */
import type { Subject } from './subject.ts';
import { sideName } from './words.ts';

export interface Misfit {
  /** Magnitude of the rest's deflection under the mapping. */
  readonly centre: number;
  /** Of each side, by how much its reach is off what an edge 2 % inside of the gate gives: negative where it falls short. */
  readonly sides: readonly { readonly name: string; readonly angle: number; readonly off: number }[];
  readonly worst: number;
  readonly u95: number | null;
}

/** How far inside of the gate an edge usually stands: common practice. */
const USUAL_INSIDE = 0.02;
/** Directions to either side of an axis that belong to its side: its neighbours in a round gate, a whole side of another. */
const ABOUT = { round: 5, other: 25 };

/**
 * A side falls short when even its best direction does, and overreaches when even its least does, so that an eight-sided gate,
 * which cannot be reached fully everywhere by any mapping, is not held against a mapping that fits it. That a side falls short is told
 * only where all of its directions are covered: turns too fast for the reports cut across the gate. Null without a rest.
 */
export function mappingMisfit({ report, half, outline }: Subject): Misfit | null {
  const { rest, rim, mapping } = report;
  if (rest === null || rest.releases === 0) return null;
  const centre = rest.offset.magnitude;
  const about = outline?.sides === 0 ? ABOUT.round : ABOUT.other;
  const sides = (
    [
      ['x', 1, 0],
      ['y', 1, 90],
      ['x', -1, 180],
      ['y', -1, 270],
    ] as const
  ).flatMap(([axis, side, angle]) => {
    const here = (rim?.directions ?? []).filter((one) => Math.abs(((one.angle - angle + 540) % 360) - 180) <= about);
    const reaches = here.flatMap((one) => (one.covered && one.reach !== null ? [one.reach] : []));
    if (reaches.length === 0) return [];
    const isWhole = reaches.length === here.length;
    const shortfall = Math.max(...reaches) - 1 - USUAL_INSIDE;
    const excess = Math.min(...reaches) - 1 - USUAL_INSIDE;
    if (shortfall < 0 && !isWhole) return [];
    return [{ name: sideName(axis, side), angle, off: shortfall < 0 ? shortfall : Math.max(0, excess) }];
  });
  const worst = Math.max(centre, ...sides.map(({ off }) => Math.abs(off)));
  const span = { x: (mapping.x.max - mapping.x.min) / 2, y: (mapping.y.max - mapping.y.min) / 2 };
  const ofRest =
    rest.u95.x === null || rest.u95.y === null ? null : Math.hypot(rest.u95.x / span.x, rest.u95.y / span.y);
  const spread = 2 * (rim?.pooledSpread ?? 0) + 1 / Math.min(half.x, half.y);
  return { centre, sides, worst, u95: ofRest === null ? null : Math.hypot(ofRest, sides.length === 0 ? 0 : spread) };
}
