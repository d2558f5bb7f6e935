/** Short range: a side of an axis gives less than the others do. */
import { directionsAbout } from './directions-about.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { isRimWhole } from './find-missing.ts';
import { lackOfReach, type LackOfReach } from './lack-of-reach.ts';
import { makeFinding } from './make-finding.ts';
import { coarserThan, offerKnown, sayKnown, sayRival } from './outline/say-suspect.ts';
import { FINEST, suspectsOf } from './outline/suspects.ts';
import type { Subject } from './subject.ts';
import { percent, sideName } from './words.ts';

/**
 * Measure: the share by which the shortest side falls short of the other side of its axis, with a seat as flat as that of a
 * sound part (see `suspectsOf`). A side that a sensor clips is judged as clipped, not as short. In the `reported` domain the pad's own
 * mapping stands before the counts, and an edge may be off by as much as a good enough one: the limit is wider by that. Passes where no short side is proven: how fine the
 * survey could look is its uncertainty.
 * A side that alone never comes to full output is short whatever the outline says (see `lackOfReach`).
 */
export function findShortRange(subject: Subject, limits: Limits): Finding | null {
  const isReported = subject.domain === 'reported';
  const limit = isReported
    ? { ...limits.shortRange, value: limits.shortRange.value + limits.stale.value }
    : limits.shortRange;
  const lacking = lackOfReach(subject);
  if (lacking !== null && lacking.lack - lacking.u95 > limits.shortRange.value)
    return findLacking(subject, limits, lacking);
  const suspects = suspectsOf(subject, { ...limits, shortRange: limit });
  if (suspects === null) return null;
  const [worst] = (['x', 'y'] as const)
    .filter((axis) => isReported || !subject.pinned.some((one) => one.axis === axis))
    .map((axis) => ({ axis, ...suspects[axis] }))
    .toSorted((a, b) => Number(b.isFault) - Number(a.isFault) || b.value - a.value);
  if (worst === undefined) return null;
  const { axis, side, value, u95, rival } = worst;
  const name = sideName(axis, side === 0 ? 1 : side);
  const angle = (axis === 'x' ? 90 : 180) - 90 * side;
  const says = `The ${subject.stick} stick gives ${percent(value)} ± ${percent(u95)} less ${name} than on the other side`;
  const isSecond = worst.isFault && rival !== null && rival.odds < 1;
  return makeFinding({
    id: 'short-range',
    stick: subject.stick,
    value,
    u95,
    limit,
    severity: isSecond ? 'caution' : 'fault',
    decision: worst.isFault ? 'fail' : u95 > FINEST.side ? 'cannot say' : 'pass',
    whole: isRimWhole(subject, limits),
    says: {
      fail: `${says}: its range is short there${sayRival(rival)}.`,
      pass: `The ${subject.stick} stick reaches as far on all sides to within ${percent(value)} ± ${percent(u95)}${coarserThan(u95, limit.value)}.`,
      'cannot say': `${says}; whether that is too much cannot be told.`,
    },
    for: [
      sayKnown(subject.gateFrom),
      rival === null ? 'The outline is flattened on that side alone; a tilted seat would move it as a whole.' : null,
    ],
    against: [
      offerKnown(u95, limit.value, subject.gateFrom),
      'A gate worn or chipped on that side would look the same.',
      rival === null ? null : 'A threefold wave of the gate of a few counts is all that tells the two apart.',
      isReported
        ? "The counts come after the pad's own mapping: a stored edge that is a little off would look the same."
        : null,
    ],
    causes: [
      'The module is not fully seated on that side',
      'A joint with too much resistance at one end of the track',
      'A worn or chipped gate',
    ],
    next: 'Look whether the module is seated down to the board, and go over the joints of that axis: battery off first, mind the hot iron; if it stays, fit another part. Calibration can stretch that side but not its steps.',
    shows: { directions: directionsAbout(angle, 45) },
  });
}

/** The pad says it itself: all other sides come to full output. */
function findLacking(subject: Subject, limits: Limits, { axis, side, lack, u95 }: LackOfReach): Finding {
  const { stick } = subject;
  const says = `At the gate the ${stick} stick lacks ${percent(lack)} ± ${percent(u95)} of full output ${sideName(axis, side)}, and comes to full output on all other sides`;
  return makeFinding({
    id: 'short-range',
    stick,
    value: lack,
    u95,
    limit: limits.shortRange,
    severity: 'fault',
    whole: isRimWhole(subject, limits),
    says: {
      fail: `${says}: its range is short there.`,
      pass: `${says}.`,
      'cannot say': `${says}; whether that is too much cannot be told.`,
    },
    for: ['Stored edges stand inside of the gate, so that a sound stick comes to full output on every side.'],
    against: ["The counts come after the pad's own mapping: a stored edge beyond the gate would look the same."],
    causes: [
      'The stored edge of that side is of another part',
      'The sensor or its converter is at its limit before the gate stops the stick',
      'The module is not fully seated on that side',
    ],
    next: 'Calibrate the pad in the way its maker gives and survey once more; if that side still lacks, look whether the module is seated down to the board, battery off first; then fit another part.',
    shows: { directions: directionsAbout((axis === 'x' ? 90 : 180) - 90 * side, 25) },
  });
}
