/** How sure proposed edges are: bootstrap over turns, or leave-one-out while there are too few of them. */
import type { RimEvidence, StickEvidence, Turn } from '../capture/evidence/evidence.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { quantileSorted } from '../numeric/quantile.ts';
import { createRandom } from '../numeric/random.ts';
import type { Pair } from '../pad/stick.ts';
import type { ProposalWish } from './proposal.ts';
import { solveMapping } from './solve.ts';

/** Fewer turns than this carry no interval (range and leave-one-out below 8). */
const ENOUGH_TURNS = 8;
const DRAWS = 60;

export interface EdgeUncertainty {
  readonly u95: number | null;
  readonly leaveOneOut: { readonly least: number; readonly greatest: number } | null;
}

export type EdgeName = 'x.min' | 'x.max' | 'y.min' | 'y.max';

const EDGES: Readonly<Record<EdgeName, (mapping: StickMapping) => number>> = {
  'x.min': (mapping) => mapping.x.min,
  'x.max': (mapping) => mapping.x.max,
  'y.min': (mapping) => mapping.y.min,
  'y.max': (mapping) => mapping.y.max,
};

export function edgeUncertainty(
  evidence: StickEvidence,
  centre: Pair,
  wish: ProposalWish,
): Readonly<Record<EdgeName, EdgeUncertainty>> {
  const rim = evidence.rim;
  const many = (rim?.turns.length ?? 0) >= ENOUGH_TURNS;
  const mappings =
    rim === null
      ? []
      : (many ? resampled(rim.turns, wish.seed) : leftOut(rim.turns)).flatMap((turns) => {
          const solved = solveMapping(withTurns(evidence, rim, turns), centre, wish);
          return solved.ok ? [solved.value] : [];
        });
  const judge = (edge: EdgeName): EdgeUncertainty => {
    const values = mappings.map(EDGES[edge]).toSorted((a, b) => a - b);
    const [least] = values;
    const greatest = values.at(-1);
    if (least === undefined || greatest === undefined) return { u95: null, leaveOneOut: null };
    if (!many) return { u95: null, leaveOneOut: { least, greatest } };
    return { u95: (quantileSorted(values, 0.975) - quantileSorted(values, 0.025)) / 2, leaveOneOut: null };
  };
  return { 'x.min': judge('x.min'), 'x.max': judge('x.max'), 'y.min': judge('y.min'), 'y.max': judge('y.max') };
}

function withTurns(evidence: StickEvidence, rim: RimEvidence, turns: readonly Turn[]): StickEvidence {
  return { ...evidence, rim: { ...rim, turns } };
}

function leftOut(turns: readonly Turn[]): Turn[][] {
  return turns.length < 2 ? [] : turns.map((left) => turns.filter((turn) => turn !== left));
}

/** Turns drawn with replacement, clockwise and counter-clockwise apart, so that coverage each way is kept. */
function resampled(turns: readonly Turn[], seed: number): Turn[][] {
  const random = createRandom(seed);
  const ways = [turns.filter((turn) => turn.way === 'clockwise'), turns.filter((turn) => turn.way !== 'clockwise')];
  return Array.from({ length: DRAWS }, () =>
    ways.flatMap((way) => way.flatMap(() => way[Math.floor(random.next() * way.length)] ?? [])),
  );
}
