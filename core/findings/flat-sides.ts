/** Sides at which the gate comes out flat, as a sensor that saturates behind its noise makes it. */
import { gateShape } from './outline/gate-shape.ts';
import type { Outline } from './outline/fit-outline.ts';
import type { DirectionMeasure } from '../measure/rim-measure.ts';

export interface FlatSide {
  readonly axis: 'x' | 'y';
  readonly side: 1 | -1;
  /** Share of the side that is cut off. */
  readonly cut: number;
  readonly u95: number;
  /** Count from the rest at which it stands, y up. */
  readonly counts: number;
}

/** Directions to either side of the axis that are looked at, and how many of them must stand at one count. */
const WITHIN = 25;
const LEAST = 5;
/** What stands at one count lies within so many shares of the side. */
const LEVEL = 0.006;
const COVERAGE = 2;

const SIDES = [
  { axis: 'x', side: 1, angle: 0, span: 'xPlus', centre: 'centreX' },
  { axis: 'y', side: 1, angle: 90, span: 'yPlus', centre: 'centreY' },
  { axis: 'x', side: -1, angle: 180, span: 'xMinus', centre: 'centreX' },
  { axis: 'y', side: -1, angle: 270, span: 'yMinus', centre: 'centreY' },
] as const;

/**
 * Looks at the covered directions about each axis: where five or more next to it stand at one count, to 0.6 % of the side, while the gate that
 * the other directions lead to goes on beyond, the sensor ends there. The cut is against that gate. A gate with a straight side toward the axis is
 * flat by itself.
 */
export function flatSides(outline: Outline, directions: readonly DirectionMeasure[]): FlatSide[] {
  return SIDES.flatMap(({ axis, side, angle, span, centre }) => {
    const near = directions.flatMap((one) => {
      const off = Math.abs(((one.angle - angle + 540) % 360) - 180);
      const along = one.covered ? one[axis] : null;
      return along === null || off > WITHIN ? [] : [{ off, along: side * along }];
    });
    const full = outline.value[span] * (1 + side * outline.value[centre]) * shapeToward(outline, angle);
    const most = Math.max(...near.map(({ along }) => along));
    const level = near.filter(({ along }) => most - along <= LEVEL * full).toSorted((a, b) => a.off - b.off);
    if (level.length < LEAST) return [];
    const widest = Math.max(...level.map(({ off }) => off));
    // A round gate stands at one count within a few degrees of its axis, too: it must be level farther than its own shape is.
    const expected = (degrees: number): number =>
      shapeToward(outline, angle + degrees) * Math.cos((degrees * Math.PI) / 180);
    const bends = 1 - Math.min(expected(widest), expected(-widest)) / expected(0);
    const cut = 1 - most / full;
    if (bends < 2 * LEVEL || cut <= 0) return [];
    const u95 = COVERAGE * Math.sqrt(outline.variance({ [span]: 1 / outline.value[span], [centre]: side }));
    return [{ axis, side, cut, u95, counts: side * most }];
  });
}

function shapeToward({ sides, value }: Outline, degrees: number): number {
  return gateShape(sides, value.rounding, (degrees * Math.PI) / 180 - value.corner);
}
