/** Dead axis: it does not move while the other one does. */
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Extent, Subject } from './subject.ts';
import { percent } from './words.ts';

/** The other axis must have moved by this share of its field. */
const MOVED = 0.2;

/** Measure: what the extent of the quieter axis over the whole log lacks against the other's, a share of it. Null where neither moved. */
export function findDeadAxis(subject: Subject, limits: Limits): Finding | null {
  const { extents, fields, stick, report } = subject;
  if (extents === null) return null;
  const share = (axis: 'x' | 'y'): number => widthOf(extents[axis]) / (fields[axis].maximum - fields[axis].minimum);
  const axis = share('x') < share('y') ? 'x' : 'y';
  const moving = share(axis === 'x' ? 'y' : 'x');
  if (!(moving >= MOVED)) return null;
  const value = 1 - share(axis) / moving;
  const noise = report.rest?.noise?.[axis] ?? 1;
  const u95 = (2 * noise) / (fields[axis].maximum - fields[axis].minimum) / moving;
  const { least, greatest } = extents[axis];
  const says = `The ${axis} axis of the ${stick} stick stayed within ${least} … ${greatest} while the other one moved, ${percent(1 - value)} of its extent`;
  return makeFinding({
    id: 'dead-axis',
    stick,
    value,
    u95,
    limit: limits.dead,
    severity: 'fault',
    says: {
      fail: `${says}: it is dead.`,
      pass: `Both axes of the ${stick} stick move.`,
      'cannot say': `${says}; whether it is dead cannot be told.`,
    },
    against: ['The stick may never have been pushed along it.'],
    causes: [
      'A pin of that axis is not soldered, or its trace is torn',
      'The wire or flat cable has come loose',
      'The sensor is dead',
    ],
    next: 'Take the battery off; check the pins of that axis for continuity down to the chip, and go over the joints. Mind the hot iron.',
    shows: { counts: [{ axis, from: least, to: greatest }] },
  });
}

function widthOf({ least, greatest }: Extent): number {
  return greatest - least;
}
