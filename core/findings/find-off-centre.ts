/** Off-centre part: the sensors' own middle, where stick and gate agree to stand, is not the middle of the range. */
import { makeFinding } from './make-finding.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { suspectsOf } from './outline/suspects.ts';
import { seatShift } from './seat-shift.ts';
import type { Subject } from './subject.ts';
import { degrees, percent, plusMinus, wayOf } from './words.ts';
import { middleOffset } from './middle-offset.ts';

/**
 * Measure: magnitude of the mean rest from the middle of the field, in shares of the half travel of each axis. The part rests
 * where its own spring holds it, so this is where the sensors' middle stands, however the gate does.
 */
export function findOffCentre(subject: Subject, limits: Limits): Finding | null {
  const offset = middleOffset(subject);
  if (offset === null) return null;
  const { x, y, magnitude, u95 } = offset;
  const seat = seatShift(subject);
  const says = `The ${subject.stick} stick rests ${plusMinus(percent(magnitude), u95 === null ? null : percent(u95))} of the half travel ${wayOf(x, y)} of the middle of the range`;
  const agrees = seat !== null && suspectsOf(subject, limits)?.seat.isFault !== true;
  return makeFinding({
    id: 'off-centre-part',
    stick: subject.stick,
    value: magnitude,
    u95,
    limit: limits.offCentre,
    severity: 'caution',
    says: {
      fail: `${says}: the part itself is off centre.`,
      pass: `${says}, which is near enough.`,
      'cannot say':
        subject.report.rest?.releases === 0
          ? `${says}, where it lay untouched; only releases show whether it returns there.`
          : `${says}; whether that is too much cannot be told.`,
    },
    for: [agrees ? 'Rest and centre of the gate agree: the part stands straight and reads off its middle.' : null],
    against: [
      seat !== null && !agrees
        ? `The gate's centre stands ${percent(seat.magnitude)} (about ${degrees(seat.degrees)}) from the rest: the seat is not flat either.`
        : null,
      subject.domain === 'reported'
        ? "The counts come after the pad's own mapping: a stale mapping would look the same."
        : null,
    ],
    causes: [
      'The magnet or wiper of this part stands off its middle',
      'Wire or joint with too much resistance on one side of the track',
      'Residue on the terminals that leaks current',
    ],
    next: 'Set the centre by calibration if both edges keep room; else try another part from the lot.',
  });
}
