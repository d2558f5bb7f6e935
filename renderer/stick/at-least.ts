/** Reaches that are "at least": what they stand on was cut off at the limit of its field. */
import { directionIndex } from '../../core/geometry/directions.ts';
import type { Domain } from '../../core/pad/stick.ts';
import type { Standing } from './standing.ts';

/** In the `reported` domain a count at a field's limit hides what lies beyond; the same under every mapping. */
export function isAtLeast(standing: Pick<Standing, 'rim'> | undefined, angle: number, domain: Domain): boolean {
  return domain === 'reported' && (standing?.rim?.directions[directionIndex(angle)]?.atLimit ?? false);
}
