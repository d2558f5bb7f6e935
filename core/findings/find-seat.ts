/** Seat not flat: the rest is not in the middle of its gate. */
import { directionsAbout } from './directions-about.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import { seatShift } from './seat-shift.ts';
import type { Subject } from './subject.ts';
import { degrees, percent, plusMinus, wayOf } from './words.ts';

/** Measure: magnitude of the rest from the gate's centre, in shares of the half travel (see `seatShift`). */
export function findSeat(subject: Subject, limits: Limits): Finding | null {
  const seat = seatShift(subject);
  if (seat === null) return null;
  const { x, y, magnitude, u95 } = seat;
  const angle = (Math.atan2(y, x) * 180) / Math.PI;
  const says = `The ${subject.stick} stick rests ${plusMinus(percent(magnitude), u95 === null ? null : percent(u95))} of the half travel ${wayOf(x, y)} of its gate's centre, a tilt of about ${degrees(seat.degrees)} where full tilt is 23°`;
  return makeFinding({
    id: 'seat-not-flat',
    stick: subject.stick,
    value: magnitude,
    u95,
    limit: limits.seat,
    severity: 'fault',
    says: {
      fail: `${says}: the part does not sit flat.`,
      pass: `${says}: it sits flat.`,
      'cannot say': `${says}; whether it sits flat cannot be told.`,
    },
    for: [
      'The whole outline is moved, as a tilt does; a side that reads short would change that side alone.',
      subject.outline === null
        ? null
        : `The outline fits a ${subject.outline.gate === 'round' ? 'round' : 'eight-sided'} gate to ${percent(subject.outline.residual, 2)}.`,
    ],
    against: [
      subject.domain === 'reported' ? "The counts come after the pad's own mapping, which may bend the outline." : null,
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
