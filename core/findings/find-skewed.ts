/** Skewed part: the two axes do not stand square to each other. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { degrees } from './words.ts';

const COVERAGE = 2;
const DEGREES = 180 / Math.PI;

/**
 * Measure: σ = 2·atan(a) in degrees, a the lean of the outline, by which each axis picks up the other: sin 2θ of the outline.
 * Its uncertainty holds what a gate that is a little oval can pretend. What sweeps along the axes say (`TravelMeasure.skewAngle`) speaks for or against.
 */
export function findSkewed(subject: Subject, limits: Limits): Finding | null {
  const { outline, report, stick } = subject;
  if (outline === null) return null;
  const skew = 2 * DEGREES * Math.atan(outline.value.lean);
  const u95 = COVERAGE * 2 * DEGREES * Math.sqrt(outline.variance({ lean: 1 }));
  const value = Math.abs(skew);
  const says = `The axes of the ${stick} stick are ${degrees(value)} ± ${degrees(u95)} from square`;
  const diagonals = skew > 0 ? [45, 225] : [135, 315];
  const swept = report.travel?.skewAngle ?? null;
  return makeFinding({
    id: 'skewed-part',
    stick,
    value,
    u95,
    limit: limits.skew,
    severity: 'fault',
    says: {
      fail: `${says}: the gate comes out slanted.`,
      pass: `${says}, which is near enough.`,
      'cannot say': `${says}; whether that is too much cannot be told.`,
    },
    for: [
      `The outline is drawn out toward ${diagonals.join('° and ')}°, as leaning axes do.`,
      swept !== null && Math.abs(swept) < 45
        ? `Sweeps along the axes are ${degrees(Math.abs(swept))} from square.`
        : null,
    ],
    against: [outline.sides > 0 ? 'A gate with corners that is worn at two of them looks much the same.' : null],
    causes: [
      'A magnet or wiper stands slanted in the part',
      'One sensor of the part is turned on its pins',
      'Each axis picks up the other: a leak between the two wipers’ lines',
    ],
    next: 'Calibration cannot take this out: look at the sensor boards of the part; if they stand straight, fit another part.',
    shows: { directions: diagonals },
  });
}
