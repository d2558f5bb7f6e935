/** Short range: a side of an axis gives less than the others do. */
import { directionsAbout } from './directions-about.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import { sideSpans } from './side-spans.ts';
import type { Subject } from './subject.ts';
import { percent, sideName } from './words.ts';

/**
 * Measure: the share by which the shortest side falls short of the other side of its axis, told from a shift of the seat by
 * the shape of the outline (see `seatShift`). A side that a sensor clips is judged as clipped, not as short. In the `reported`
 * domain the pad's own mapping stands before the counts: an edge that is off by as much as a good enough one may be counts as
 * uncertainty.
 */
export function findShortRange(subject: Subject, limits: Limits): Finding | null {
  const sides = sideSpans(subject);
  if (sides === null) return null;
  const [worst] = sides
    .filter(({ axis, side }) => !subject.pinned.some((one) => one.axis === axis && one.side === side))
    .toSorted((a, b) => b.short - a.short);
  if (worst === undefined) return null;
  const { axis, side, short, angle } = worst;
  const isReported = subject.domain === 'reported';
  const u95 = isReported ? Math.hypot(worst.u95, limits.stale.value) : worst.u95;
  const name = sideName(axis, side);
  const says = `The ${subject.stick} stick gives ${percent(short)} ± ${percent(u95)} less ${name} than on the other side`;
  return makeFinding({
    id: 'short-range',
    stick: subject.stick,
    value: Math.max(0, short),
    u95,
    limit: limits.shortRange,
    severity: 'fault',
    says: {
      fail: `${says}: its range is short there.`,
      pass: `The ${subject.stick} stick reaches as far on all sides to within ${percent(Math.max(0, short))} ± ${percent(u95)}.`,
      'cannot say': `${says}; whether that is too much cannot be told.`,
    },
    for: ['The outline is flattened on that side alone; a tilted seat would move it as a whole.'],
    against: [
      'A gate worn or chipped on that side would look the same.',
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
