/** Where the rest stands in its gate. */
import type { Subject } from './subject.ts';

export interface SeatShift {
  /** Of the rest as seen from the gate's centre, shares of the half travel, y up. */
  readonly x: number;
  readonly y: number;
  readonly magnitude: number;
  /** The same as a tilt of the seat, where full tilt is 23°. */
  readonly degrees: number;
  readonly u95: number | null;
}

/** What makers' sheets of small stick modules allow in each direction; the part at hand may differ. */
const FULL_TILT_DEGREES = 23;
/** Half width of what a gate not quite round can pretend, as a share: common practice of moulded shells. */
const SHAPE = 0.002;
const COVERAGE = 2;

/**
 * From the outline's centre, which a least-squares fit tells from a range that is short on one side: a shift moves the outline by
 * cos θ, a short side changes it by cos θ·|cos θ|. U combines the fit, the rest's own and the shape of the gate. Null
 * without an outline or without releases.
 */
export function seatShift({ outline, aboutRest, report, half }: Subject): SeatShift | null {
  if (outline === null || !aboutRest) return null;
  const x = -outline.value.centreX + 0;
  const y = -outline.value.centreY + 0;
  const fit = outline.variance({ centreX: 1 }) + outline.variance({ centreY: 1 });
  const rest = report.rest?.u95;
  const magnitude = Math.hypot(x, y);
  const u95 =
    rest?.x === undefined || rest.x === null || rest.y === null
      ? null
      : Math.sqrt(COVERAGE ** 2 * fit + (rest.x / half.x) ** 2 + (rest.y / half.y) ** 2 + SHAPE ** 2);
  return { x, y, magnitude, degrees: magnitude * FULL_TILT_DEGREES, u95 };
}
