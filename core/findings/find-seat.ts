/** Seat not flat: the rest is not in the middle of its gate. */
import { directionsAbout } from './directions-about.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { isRimWhole } from './find-missing.ts';
import { makeFinding } from './make-finding.ts';
import { coarserThan, offerKnown, sayKnown, sayRival } from './outline/say-suspect.ts';
import { FINEST, suspectsOf } from './outline/suspects.ts';
import { FULL_TILT_DEGREES } from './seat-shift.ts';
import type { Subject } from './subject.ts';
import { degrees, percent, wayOf } from './words.ts';

/**
 * Measure: magnitude of the rest from the gate's centre, in shares of the half travel, with sides as alike as those of a sound
 * part (see `suspectsOf`). Passes where no tilt is proven: how fine the survey could look is its uncertainty.
 */
export function findSeat(subject: Subject, limits: Limits): Finding | null {
  const seat = suspectsOf(subject, limits)?.seat;
  if (seat === undefined || seat.shift === null) return null;
  const { value, u95, shift, rival } = seat;
  const { x, y } = shift;
  const angle = (Math.atan2(y, x) * 180) / Math.PI;
  const says = `The ${subject.stick} stick rests ${percent(value)} ± ${percent(u95)} of the half travel ${wayOf(x, y)} of its gate's centre, a tilt of about ${degrees(value * FULL_TILT_DEGREES)} ± ${degrees(u95 * FULL_TILT_DEGREES)} where full tilt is 23°`;
  const isSecond = seat.isFault && rival !== null && rival.odds < 1;
  return makeFinding({
    id: 'seat-not-flat',
    stick: subject.stick,
    value,
    u95,
    limit: limits.seat,
    severity: isSecond ? 'caution' : 'fault',
    whole: isRimWhole(subject, limits),
    decision: seat.isFault ? 'fail' : u95 > FINEST.seat ? 'cannot say' : 'pass',
    says: {
      fail: `${says}: the part does not sit flat${sayRival(rival)}.`,
      pass: `${says}: no tilted seat is seen${coarserThan(u95, limits.seat.value)}.`,
      'cannot say': `${says}; whether it sits flat cannot be told.`,
    },
    for: [
      sayKnown(subject.gateFrom),
      rival === null
        ? 'The whole outline is moved, as a tilt does; a side that reads short would change that side alone.'
        : null,
      subject.outline === null
        ? null
        : `The outline fits ${GATES[subject.outline.sides]} gate to ${percent(subject.outline.residual, 2)}.`,
    ],
    against: [
      offerKnown(u95, limits.seat.value, subject.gateFrom),
      subject.domain === 'reported' ? "The counts come after the pad's own mapping, which may bend the outline." : null,
      rival === null ? null : 'A threefold wave of the gate of a few counts is all that tells the two apart.',
    ],
    causes: [
      'A corner post or tab of the module stands off the board',
      'Solder or flux under the module',
      'The shell presses on one side: a cable, a screw or the rubber under it',
    ],
    next: 'Take the battery off first; loosen the shell and look whether the offset goes; then heat the posts one by one and press the module flat. Mind the hot iron, and the maker’s instructions.',
    shows: { directions: directionsAbout(angle, 30) },
  });
}

const GATES = { 0: 'a round', 4: 'a four-sided', 6: 'a six-sided', 8: 'an eight-sided' } as const;
