/** What the log is too thin for: too few releases, directions that were not covered. */
import { widestGap } from '../capture/evidence/widest-gap.ts';
import { runsOf } from '../geometry/directions.ts';
import type { Finding } from './finding.ts';
import type { Limit, Limits } from './limits.ts';
import { makeFinding } from './make-finding.ts';
import type { Subject } from './subject.ts';

/** Fewer releases than any statement on the rest takes. Null where there are enough. */
export function findRestMissing({ report, stick }: Subject, limits: Limits): Finding | null {
  const releases = report.rest?.releases ?? 0;
  const limit = limits.releases;
  if (releases >= limit.value) return null;
  const counted =
    releases === 0 ? 'No settled release' : releases === 1 ? 'One settled release' : `${releases} settled releases`;
  const says = `${counted} of the ${stick} stick ${releases > 1 ? 'were' : 'was'} measured, and ${limit.value} are the least for a statement on its rest.`;
  return missing(
    'rest-not-measured',
    stick,
    releases,
    limit,
    says,
    report.lacks.map((one) => one.says),
    'Record the rest: push the stick in spread directions, let it snap back and keep off it, 24 times.',
    [],
  );
}

/** Directions of the gate that were not covered, where they leave a wider gap than may stay open. Null where none does. */
export function findRimUncovered({ report, stick }: Subject, limits: Limits): Finding | null {
  const { rim } = report;
  const { open, gap } = uncovered(rim);
  if (gap <= limits.uncovered.value) return null;
  const where = rim === null || gap >= 360 ? 'any direction' : sayStretches(open);
  const says = `The gate of the ${stick} stick is not covered by two turns each way in ${where}; nothing is concluded there.`;
  const next = 'Turn the stick slowly along the gate, three times each way, pressing lightly outward all the time.';
  return missing('rim-not-covered', stick, gap, limits.uncovered, says, [], next, open);
}

/**
 * Whether the gate was covered as far as its outline must be to tell of a fault: a turn that leaves the gate bends it as a fault does, and a
 * gate that is not covered may be such a turn's.
 */
export function isRimWhole({ report }: Subject, limits: Limits): boolean {
  return uncovered(report.rim).gap <= limits.uncovered.value;
}

/** Directions that are not covered, and the widest stretch of them, degrees. */
function uncovered(rim: Subject['report']['rim']): { readonly open: readonly number[]; readonly gap: number } {
  const open = rim === null ? [] : rim.directions.filter((one) => !one.covered).map(({ angle }) => angle);
  return { open, gap: rim === null ? 360 : widestGap(open).degrees };
}

function missing(
  id: 'rest-not-measured' | 'rim-not-covered',
  stick: Subject['stick'],
  value: number,
  limit: Limit,
  says: string,
  why: readonly string[],
  next: string,
  directions: readonly number[],
): Finding {
  const finding = makeFinding({
    id,
    stick,
    value,
    u95: 0,
    limit,
    severity: 'caution',
    decision: 'cannot say',
    says: { fail: says, pass: says, 'cannot say': says },
    for: why,
    next,
    unsure: next,
    shows: { directions },
  });
  return { ...finding, severity: 'caution' };
}

function sayStretches(open: readonly number[]): string {
  const parts = runsOf(open).map(({ first, last }) => (first === last ? `${first}°` : `${first}° to ${last}°`));
  return parts.length <= 6
    ? parts.join(', ')
    : `${parts.slice(0, 6).join(', ')} and ${parts.length - 6} more stretches`;
}
