/** Two rests: let go, the stick settles in one of two places. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { twoPlaces } from './two-places.ts';
import { percent, plusMinus, wayOf } from './words.ts';

/** So many of the releases must lie at the rarer place. */
const LEAST = 3;
/** Two halves of one normal cloud lie 2.6 of their own σ apart; two places lie farther. */
const APART = 6;
const COVERAGE = 2;

/** Measure: the distance of the two places in shares of the half travel (see `twoPlaces`). Passes where the rests make one cloud. */
export function findTwoRests({ report, half, stick, rests, fields }: Subject, limits: Limits): Finding | null {
  if (report.rest === null || rests.length < limits.releases.value) return null;
  const scaled = rests.map(({ x, y }) => ({ x: (fields.x.up * x) / half.x, y: (fields.y.up * y) / half.y }));
  const found = twoPlaces(scaled);
  if (found === null) return null;
  const { x, y, sigma, fewer } = found;
  const step = Math.max(report.rest.step.x / half.x, report.rest.step.y / half.y);
  const value = Math.hypot(x, y);
  const isTwo = fewer >= LEAST && value > APART * Math.max(sigma, step / 2);
  const u95 = Math.hypot(COVERAGE * sigma * Math.sqrt(1 / fewer + 1 / (rests.length - fewer)), step);
  const says = `The ${stick} stick comes to rest in one of two places, ${plusMinus(percent(value), percent(u95))} of the half travel apart: ${fewer} of ${rests.length} releases lie ${wayOf(x, y)} of the others`;
  return makeFinding({
    id: 'two-rests',
    stick,
    value: isTwo ? value : 0,
    u95: isTwo ? u95 : 0,
    limit: limits.looseReturn,
    severity: 'fault',
    says: {
      fail: `${says}.`,
      pass: isTwo ? `${says}, too near to matter.` : `The rests of the ${stick} stick lie about one place.`,
      'cannot say': `${says}; whether that is too far cannot be told.`,
    },
    for: [`At each of the two it scatters by ${percent(sigma, 2)} only.`],
    against: ['A shell or cable that is pushed aside by the hand does it, too.'],
    causes: [
      'A dent or burr that the shaft or its spring cup falls into',
      'A magnet or wiper that is loose and stands now here, now there',
      'The shell, a cable or the rubber pushes on the stick',
    ],
    next: 'Record the rest once more with the shell open: if there is one place then, free the stick; if not, replace the part.',
  });
}
