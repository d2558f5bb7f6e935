/** Where the rest stands in its gate. */
import { weigh } from './outline/seat-or-side.ts';
import type { Subject } from './subject.ts';

export interface SeatShift {
  /** Of the rest as seen from the gate's centre, shares of the half travel, y up. */
  readonly x: number;
  readonly y: number;
  readonly magnitude: number;
  /** The same as a tilt of the seat, where full tilt is 23°. */
  readonly degrees: number;
}

/** What makers' sheets of small stick modules allow in each direction; the part at hand may differ. */
export const FULL_TILT_DEGREES = 23;

/** With sides as alike as those of a sound part (see `weigh`). Null without an outline or without releases. */
export function seatShift({ outline, aboutRest }: Subject): SeatShift | null {
  if (outline === null || !aboutRest) return null;
  const [cx, cy] = weigh(outline, { x: 0, y: 0 }, ['seat'])?.mean ?? [];
  if (cx === undefined || cy === undefined) return null;
  const magnitude = Math.hypot(cx, cy);
  return { x: -cx + 0, y: -cy + 0, magnitude, degrees: magnitude * FULL_TILT_DEGREES };
}
