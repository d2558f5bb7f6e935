/** The widest stretch of directions that are not covered: what a proposal, a finding and a limit mean by a gap. */

const STEP = 5;
const DIRECTIONS = 72;

export interface Gap {
  /** 5° for each direction of the stretch: 0 where every direction is covered, 360 where none is. */
  readonly degrees: number;
  /** Its first and last direction, counter-clockwise; a stretch may pass 0°. */
  readonly from: number;
  readonly to: number;
}

/** `open` are the directions in degrees that are not covered, in any order. */
export function widestGap(open: readonly number[]): Gap {
  return stretchesOf(open).reduce((widest, one) => (one.degrees > widest.degrees ? one : widest), {
    degrees: 0,
    from: 0,
    to: 0,
  });
}

/** Runs of neighbouring directions; one that passes 0° is one run. */
export function stretchesOf(open: readonly number[]): Gap[] {
  const isOpen = new Set(open);
  if (isOpen.size >= DIRECTIONS) return [{ degrees: 360, from: 0, to: 355 }];
  return [...isOpen]
    .filter((angle) => !isOpen.has((angle + 360 - STEP) % 360))
    .map((from) => {
      let length = 1;
      while (isOpen.has((from + length * STEP) % 360)) length += 1;
      return { degrees: length * STEP, from, to: (from + (length - 1) * STEP) % 360 };
    });
}
