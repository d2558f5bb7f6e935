/** Stale mapping: what is stored does not fit the stick that is there. */
import { directionsAbout } from './directions-about.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import { mappingMisfit } from './mapping-misfit.ts';
import { middleOffset } from './middle-offset.ts';
import { seatShift } from './seat-shift.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

/**
 * Measure: the largest of the rest's deflection and of what a side's reach is off an edge 2 % inside of the gate, under the
 * mapping of the pad or of a file. Not concluded in the `reported` domain, nor where no mapping is known.
 */
export function findStaleMapping(subject: Subject, limits: Limits): Finding | null {
  const { report, domain, stick } = subject;
  if (domain === 'reported' || report.mappingFrom === 'range') return null;
  const misfit = mappingMisfit(subject);
  if (misfit === null) return null;
  const { centre, sides, worst, u95 } = misfit;
  const whose = report.mappingFrom === 'file' ? 'the mapping file' : 'what the pad stores';
  const side = sides.toSorted((a, b) => Math.abs(b.off) - Math.abs(a.off))[0];
  const isCentre = side === undefined || centre >= Math.abs(side.off);
  const what = isCentre
    ? `its rest comes out as ${percent(centre)} of full deflection`
    : side.off < 0
      ? `its reach ${side.name} falls ${percent(-side.off)} short of what an edge just inside of the gate gives`
      : `its reach ${side.name} goes ${percent(side.off)} further than an edge just inside of the gate gives`;
  const says = `Under ${whose}, ${what}`;
  const seat = seatShift(subject);
  const middle = middleOffset(subject);
  const straight =
    seat !== null && seat.magnitude < limits.seat.value && middle !== null && middle.magnitude < limits.offCentre.value;
  const wrong = sides.filter(({ off }) => Math.abs(off) > limits.stale.value);
  return makeFinding({
    id: 'stale-mapping',
    stick,
    value: worst,
    u95,
    limit: limits.stale,
    severity: 'caution',
    says: {
      fail: `${says}: it does not fit the ${stick} stick as it is.`,
      pass: `The ${stick} stick fits ${whose}.`,
      'cannot say': `${says}; whether that is too much cannot be told.`,
    },
    for: [straight ? "Rest, gate's centre and sensor's middle agree: only the stored numbers differ." : null],
    against: [
      straight ? null : 'Another finding moves the rest or the gate itself: see to that first, the numbers follow.',
      sides.length < 4 ? 'Not every side of the gate was covered.' : null,
    ],
    causes: [
      'The part was renewed and the old numbers are still stored',
      'The part has aged since it was calibrated',
      'The mapping belongs to another pad',
    ],
    next: 'Take the proposal of the Workbench, see what it predicts, and write it by a patch after two agreeing backups.',
    shows: { directions: wrong.flatMap(({ angle }) => directionsAbout(angle, ABOUT)) },
  });
}

const ABOUT = 25;
