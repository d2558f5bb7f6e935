/** The numbers of one direction, for those who listen and for the foot line. */
import { directionIndex } from '../../core/geometry/directions.ts';
import { percent } from '../../core/plot/number-text.ts';
import type { Standing } from '../stick/standing.ts';

/** E.g. `reach now 0.914 · proposed 1.022` and `onset now 9.1 % · proposed 8.3 %`; what is not known is left out, and a reach at the limit of its field is `≥`. */
export function directionParts(standings: readonly Standing[], angle: number, atLeast = false): string[] {
  const index = directionIndex(angle);
  const reach = listed(standings, ({ rim }) => {
    const value = rim?.directions[index]?.reach ?? null;
    return value === null ? null : `${atLeast ? '≥ ' : ''}${value.toFixed(3)}`;
  });
  const onset = listed(standings, ({ zones }) => {
    const value = zones.onset?.[index]?.deflection ?? null;
    return value === null ? null : percent(value);
  });
  return [...(reach === '' ? ['no reach measured'] : [`reach ${reach}`]), ...(onset === '' ? [] : [`onset ${onset}`])];
}

function listed(standings: readonly Standing[], write: (standing: Standing) => string | null): string {
  return standings
    .flatMap((standing) => {
      const written = write(standing);
      return written === null ? [] : [`${standing.tone} ${written}`];
    })
    .join(' · ');
}
