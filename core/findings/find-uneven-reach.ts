/** Uneven reach: between the axes the stick gives less than its gate lets expect. */
import { gateShape } from './outline/gate-shape.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { isRimWhole } from './find-missing.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

/** Nearer to an axis it is the edge of that side that falls short, which the stored numbers are asked for. */
const BESIDE = 15;
/** Directions that must say the same: a single one may be a dent. */
const LEAST = 6;

/**
 * Measure: how much less of full output than the shape of the gate lets expect is seen in the sixth-worst direction between the
 * axes, under the mapping in force. A round gate lets expect full output everywhere, one with corners its own shape from where the axes
 * meet it. U: twice the spread of the turns. Null where no mapping is in force or the gate is not covered.
 */
export function findUnevenReach(subject: Subject, limits: Limits): Finding | null {
  const { report, outline, domain, stick } = subject;
  const { rim } = report;
  if (rim === null || outline === null || (report.mappingFrom === 'range' && domain === 'sensor')) return null;
  const { sides, value: of } = outline;
  const shape = (degrees: number): number => gateShape(sides, of.rounding, (degrees * Math.PI) / 180 - of.corner);
  const axes = Math.min(...[0, 90, 180, 270].map(shape));
  const short = rim.directions.flatMap(({ angle, seen, covered }) => {
    const off = Math.abs(angle - 90 * Math.round(angle / 90));
    return covered && seen !== null && off >= BESIDE
      ? [{ angle, by: Math.min(1, shape(angle) / axes) - seen, seen }]
      : [];
  });
  const worst = short.toSorted((a, b) => b.by - a.by).slice(0, LEAST);
  const last = worst.at(-1);
  if (worst.length < LEAST || last === undefined) return null;
  const value = Math.max(0, last.by);
  const u95 = 2 * (rim.pooledSpread ?? 0);
  const least = Math.min(...short.map(({ seen }) => seen));
  const full = rim.fullReachShare ?? 0;
  const says = `Between its axes the ${stick} stick gives as little as ${percent(least, 0)} of full output, and full output in ${percent(full, 0)} of all directions`;
  return makeFinding({
    id: 'uneven-reach',
    stick,
    value,
    u95,
    limit: limits.unevenReach,
    severity: 'caution',
    whole: isRimWhole(subject, limits),
    says: {
      fail: `${says}: its outline is no circle under these numbers.`,
      pass: `The ${stick} stick reaches between its axes what its gate allows, to within ${percent(value)}.`,
      'cannot say': `${says}; whether that is too little cannot be told.`,
    },
    for: [`Mean radial error ${percent(rim.meanRadialError ?? 0)}.`],
    against: ['A gate of a shape of its own looks the same.'],
    causes: ['A sensor that does not follow in a straight line', 'Edges that are stored too far out for this sensor'],
    next: 'Take the proposal for full reach in the Workbench and see what it costs along the axes; if that is too much, fit another part.',
    shows: { directions: worst.map(({ angle }) => angle) },
  });
}
