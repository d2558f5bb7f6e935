/** The widest stretch of directions that are not covered: what a proposal, a finding and a limit mean by a gap. */
import { directionStep, runsOf } from '../../geometry/directions.ts';

export interface Gap {
  /** 5° for each direction of the stretch: 0 where every direction is covered, 360 where none is. */
  readonly degrees: number;
  /** Its first and last direction, counter-clockwise; a stretch may pass 0°. */
  readonly from: number;
  readonly to: number;
}

/** `open` are the directions in degrees that are not covered, in any order; of equally wide gaps the first from 0° on. */
export function widestGap(open: readonly number[]): Gap {
  return runsOf(open)
    .map(({ first, last, count }) => ({ degrees: count * directionStep, from: first, to: last }))
    .reduce((widest, one) => (one.degrees > widest.degrees ? one : widest), { degrees: 0, from: 0, to: 0 });
}
