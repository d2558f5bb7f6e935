/** Mapping of another pad: the log and the mapping are not of the same pad. */
import { kinshipOf, sayOwner, type PadOwner } from '../pad/owner.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

/**
 * Measure: by how much the rest, or the reach in the middle of all directions, is off under the mapping. The pad's numbers in
 * file and log decide by themselves where they differ. Null where no mapping was given and none is stored.
 */
export function findOtherPad(
  subject: Subject,
  logPad: PadOwner,
  owner: PadOwner | null,
  limits: Limits,
): Finding | null {
  const { report, stick } = subject;
  if (report.mappingFrom === 'range') return null;
  const isOther = report.mappingFrom === 'file' && owner !== null && kinshipOf(owner, logPad) === 'other';
  const reaches = (report.rim?.directions ?? []).flatMap(({ reach }) => reach ?? []).toSorted((a, b) => a - b);
  const middle = reaches[Math.floor(reaches.length / 2)];
  const reachOff = middle === undefined ? 0 : Math.abs(middle - 1);
  const restOff = report.rest === null ? 0 : report.rest.offset.magnitude;
  const value = Math.max(restOff, reachOff);
  if (!isOther && value <= limits.otherPad.value) return null;
  const says = isOther
    ? `The mapping file is of the pad ${sayOwner(owner)}, the log of ${sayOwner(logPad)}.`
    : `Under this mapping the ${stick} stick ${restOff >= reachOff ? `rests at ${percent(restOff, 0)}` : `reaches ${percent(middle ?? 0, 0)}`} of full deflection, which no fault of a fitted stick explains: the mapping is of another pad.`;
  return makeFinding({
    id: 'mapping-of-another-pad',
    stick,
    value,
    u95: 0.05,
    limit: limits.otherPad,
    severity: 'fault',
    ...(isOther ? { decision: 'fail' as const } : {}),
    says: { fail: says, pass: says, 'cannot say': says },
    for: isOther ? ['What file and log say of their pad differs.'] : [],
    against: isOther ? [] : ['A stick that was held all through the log would look the same.'],
    causes: ['The file was taken for another pad', 'The log is of another pad'],
    next: 'Choose the mapping that belongs to this pad; nothing that stands under this one holds.',
  });
}
