/** Whether a fault of a draw is among the first that failed. */
import type { Judged } from './judge-draw.ts';
import { namesFor } from './names.ts';

/** The fault of this place in the wish; false for a draw without it. */
export function isNamed({ wish, failed }: Pick<Judged, 'wish' | 'failed'>, at: number, within: number): boolean {
  const fault = wish.faults[at];
  if (fault === undefined) return false;
  const names: readonly string[] = namesFor(fault.name, {
    domain: wish.pad.startsWith('sensor') ? 'sensor' : 'reported',
  });
  return failed.slice(0, within).some((id) => names.includes(id));
}
