/** A side on which a pad never reports full output, while it does on all others. */
import type { Subject } from './subject.ts';

export interface LackOfReach {
  readonly axis: 'x' | 'y';
  readonly side: 1 | -1;
  /** Share of full output that is missing, from the rest. */
  readonly lack: number;
  /** A step of the counts, as a share of the side. */
  readonly u95: number;
}

const SIDES = [
  { axis: 'x', side: 1 },
  { axis: 'x', side: -1 },
  { axis: 'y', side: 1 },
  { axis: 'y', side: -1 },
] as const;
/** Full output is reached within so many steps of the field's end. */
const AT_END = 1.5;

/**
 * 1 − (farthest covered rim point of the side)/(end of the field), from the rest. Stored edges stand inside of the gate, so that a
 * sound stick reaches full output on every side. Null in sensor counts, which end wherever the sensor does, without rest or rim, and
 * unless exactly three of the four sides reach full output: a pad may report less than its field on all.
 */
export function lackOfReach({ domain, report, fields }: Subject): LackOfReach | null {
  const { rest, rim } = report;
  if (domain !== 'reported' || rest === null || rim === null) return null;
  const sides = SIDES.map(({ axis, side }) => {
    const { minimum, maximum, up } = fields[axis];
    const full = Math.abs((side * up > 0 ? maximum : minimum) - rest.point[axis]);
    const reach = rim.directions.reduce(
      (most, one) => (one.covered && one[axis] !== null ? Math.max(most, side * one[axis]) : most),
      0,
    );
    return { axis, side, lack: 1 - reach / full, u95: rest.step[axis] / full };
  });
  const short = sides.filter(({ lack, u95 }) => lack > AT_END * u95);
  return short.length === 1 ? (short[0] ?? null) : null;
}
