/** How sure a proposed centre is: seeded bootstrap over releases, and how much one release moves it. */
import type { Dwell } from '../capture/evidence/evidence.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { quantileSorted } from '../numeric/quantile.ts';
import { createRandom } from '../numeric/random.ts';
import type { Pair } from '../pad/stick.ts';
import { chooseCentre } from './choose-centre.ts';
import type { CentreBy } from './proposal.ts';

const DRAWS = 400;

export interface CentreUncertainty {
  /** Half the width of the central 95 % of the bootstrap centres, in counts; null with fewer than 3 releases. */
  readonly u95: { readonly x: number; readonly y: number } | null;
  /** Largest move of the centre when any one release is left out, in counts. */
  readonly oneRelease: Pair | null;
}

/** Releases, not samples, are the independent units: whole releases are drawn with replacement. */
export function centreUncertainty(
  dwells: readonly Dwell[],
  by: CentreBy,
  edges: StickMapping,
  seed: number,
): CentreUncertainty {
  const centre = chooseCentre(dwells, by, edges);
  if (centre === null || dwells.length < 3) return { u95: null, oneRelease: null };
  const random = createRandom(seed);
  const xs: number[] = [];
  const ys: number[] = [];
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const drawn = dwells
      .map(() => dwells[Math.floor(random.next() * dwells.length)])
      .filter((dwell) => dwell !== undefined);
    const again = chooseCentre(drawn, by, edges);
    if (again === null) continue;
    xs.push(again.x);
    ys.push(again.y);
  }
  return { u95: { x: halfWidth95(xs), y: halfWidth95(ys) }, oneRelease: leaveOneOut(dwells, by, edges, centre) };
}

function halfWidth95(values: number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  return (quantileSorted(sorted, 0.975) - quantileSorted(sorted, 0.025)) / 2;
}

function leaveOneOut(dwells: readonly Dwell[], by: CentreBy, edges: StickMapping, centre: Pair): Pair {
  let x = 0;
  let y = 0;
  for (const left of dwells) {
    const without = chooseCentre(
      dwells.filter((dwell) => dwell !== left),
      by,
      edges,
    );
    if (without === null) continue;
    x = Math.max(x, Math.abs(without.x - centre.x));
    y = Math.max(y, Math.abs(without.y - centre.y));
  }
  return { x, y };
}
