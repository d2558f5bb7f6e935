/** Which side of a limit holds. */
import type { FindingId } from '../../core/findings/finding.ts';

export type Side = 'at most' | 'at least';

/** Findings that hold from the limit upwards. */
const AT_LEAST: ReadonlySet<FindingId> = new Set(['rest-not-measured']);

export function sideOf({ id }: { readonly id: FindingId }): Side {
  return AT_LEAST.has(id) ? 'at least' : 'at most';
}
