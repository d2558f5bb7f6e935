/** Mapping of another pad: the log and the mapping are not of the same pad. */
import type { PadIdentity } from '../pad/identity.ts';
import type { Finding } from './finding.ts';
import type { Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';
import { percent } from './words.ts';

/** What a mapping file says of its pad. */
export type MappingOwner = Pick<PadIdentity, 'vendorId' | 'productId'>;

/**
 * Measure: by how much the rest, or the reach in the middle of all directions, is off under the mapping. The pad's numbers in
 * file and log decide by themselves where they differ. Null where no mapping was given and none is stored.
 */
export function findOtherPad(
  subject: Subject,
  logPad: MappingOwner,
  owner: MappingOwner | null,
  limits: Limits,
): Finding | null {
  const { report, stick } = subject;
  if (report.mappingFrom === 'range') return null;
  const isOther =
    report.mappingFrom === 'file' &&
    owner !== null &&
    (owner.vendorId !== logPad.vendorId || owner.productId !== logPad.productId);
  const reaches = (report.rim?.directions ?? []).flatMap(({ reach }) => reach ?? []).toSorted((a, b) => a - b);
  const middle = reaches[Math.floor(reaches.length / 2)];
  const reachOff = middle === undefined ? 0 : Math.abs(middle - 1);
  const restOff = report.rest === null ? 0 : report.rest.offset.magnitude;
  const value = Math.max(restOff, reachOff);
  if (!isOther && value <= limits.otherPad.value) return null;
  const says = isOther
    ? `The mapping file is of the pad ${sayPad(owner)}, the log of ${sayPad(logPad)}.`
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
    for: isOther ? ['Vendor and product number differ.'] : [],
    against: isOther ? [] : ['A stick that was held all through the log would look the same.'],
    causes: ['The file was taken for another pad', 'The log is of another pad'],
    next: 'Choose the mapping that belongs to this pad; nothing that stands under this one holds.',
  });
}

function sayPad({ vendorId, productId }: MappingOwner): string {
  const hex = (value: number): string => value.toString(16).padStart(4, '0');
  return `${hex(vendorId)}:${hex(productId)}`;
}
