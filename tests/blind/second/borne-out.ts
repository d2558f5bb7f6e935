/** Whether a failed finding of a sound stick is so, by the numbers it was drawn with, although no fault was put in. */
import { defaultLimits } from '../../../core/findings/limits.ts';
import { FULL_TILT } from './gate.ts';
import { plus, sizeOf } from './plane.ts';
import { truthOf } from './truth.ts';
import type { Unit } from './unit.ts';

const { offCentre, seat, skew, turn, shortRange } = defaultLimits;

/**
 * What the tolerances of a sound part may bring beyond a limit of the program: its middle, its seat with its spring, its angles, its
 * sides, and reports that are lost or sent on change only. Behind a pad's own mapping its rest is the middle. Nothing else is so of a sound stick.
 */
export function isBorneOut(id: string, { parts: { left }, plan }: Unit): boolean {
  const { rest } = truthOf(left);
  const side = ({ plusGain, minusGain }: { plusGain: number; minusGain: number }): number =>
    1 - Math.min(plusGain, minusGain) / Math.max(plusGain, minusGain);
  switch (id) {
    case 'off-centre-part':
      return plan.domain === 'sensor' && sizeOf(rest) > offCentre.value;
    case 'seat-not-flat':
      return sizeOf(plus(left.seat, left.springOff)) / FULL_TILT > seat.value;
    case 'skewed-part':
      return Math.abs(left.skew) > skew.value;
    case 'turned-part':
      return Math.abs(left.turned) > turn.value;
    case 'short-range':
      return Math.max(side(left.x), side(left.y)) > shortRange.value;
    case 'late-reports':
      return plan.onChange || plan.loss !== null;
    default:
      return false;
  }
}
