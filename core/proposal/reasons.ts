/** Each number of a proposal with its reason in one plain sentence. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { deflect } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { AxisField } from '../pad/stick.ts';
import type { CentreUncertainty } from './centre-uncertainty.ts';
import type { EdgeName, EdgeUncertainty } from './edge-uncertainty.ts';
import type { ProposalWish, Reason } from './proposal.ts';
import { coveredRimPoints, type RimPoint } from './rim-points.ts';

interface Grounds {
  readonly evidence: StickEvidence;
  readonly mapping: StickMapping;
  /** With the guard that was used. */
  readonly wish: ProposalWish;
  readonly centre: CentreUncertainty;
  readonly edges: Readonly<Record<EdgeName, EdgeUncertainty>>;
}

/** In the order x.min, x.centre, x.max, y.min, y.centre, y.max. */
export function reasonsFor(grounds: Grounds): Reason[] {
  return (['x', 'y'] as const).flatMap((axis) => [
    edgeReason(grounds, axis, 'min'),
    centreReason(grounds, axis),
    edgeReason(grounds, axis, 'max'),
  ]);
}

function centreReason({ evidence, wish, centre }: Grounds, axis: 'x' | 'y'): Reason {
  const releases = evidence.rest?.dwells.length ?? 0;
  const moved = centre.oneRelease?.[axis] ?? null;
  const base =
    wish.centreBy === 'mean'
      ? `The mean of ${releases} rest points, as a whole count.`
      : `The count that keeps the largest deflection at rest over all readings of ${releases} releases as small as it can be.`;
  const one =
    moved === null
      ? ''
      : ` Leaving any one release out moves it by at most ${moved} ${moved === 1 ? 'count' : 'counts'}.`;
  return { of: `${axis}.centre`, says: base + one, u95: centre.u95?.[axis] ?? null, leaveOneOut: null };
}

function edgeReason(grounds: Grounds, axis: 'x' | 'y', end: 'min' | 'max'): Reason {
  const of = `${axis}.${end}` as const;
  const { u95, leaveOneOut } = grounds.edges[of];
  return {
    of,
    says: aimSays(grounds, axis, end) + turnsSay(leaveOneOut) + censoredSays(grounds, axis, end),
    u95,
    leaveOneOut,
  };
}

function turnsSay(range: { readonly least: number; readonly greatest: number } | null): string {
  if (range === null) return '';
  return range.least === range.greatest
    ? ' It stays the same when any one turn is left out.'
    : ` Between ${range.least} and ${range.greatest} when any one turn is left out.`;
}

function aimSays({ evidence, mapping, wish }: Grounds, axis: 'x' | 'y', end: 'min' | 'max'): string {
  if (wish.aim === 'edges') {
    return `The median over ${evidence.rim?.turns.length ?? 0} turns of the ${end === 'min' ? 'least' : 'greatest'} count that each reached.`;
  }
  if (wish.aim === 'even') {
    return 'With the other three edges it makes the mean distance of the reach from full output as small as it can be, above and below alike.';
  }
  const tight = tightest(evidence, mapping, axis, end);
  const need = (1 + wish.guard).toFixed(3);
  return tight === null
    ? `As wide as the other edges let it be with reach ${need} or more in every covered direction.`
    : `As wide as reach ${need} in every covered direction lets it be: toward ${tight}° there is none to spare.`;
}

/** Reaches this near to the least one are as tight as it: a whole count is about so much. */
const AS_TIGHT = 0.002;

/** Among the directions that hold this edge back, the one that lies nearest to its axis. */
function tightest(evidence: StickEvidence, mapping: StickMapping, axis: 'x' | 'y', end: 'min' | 'max'): number | null {
  const served = coveredRimPoints(evidence)
    .filter((point) => servedBy(point, mapping, axis, end))
    .map((point) => {
      const d = deflect(mapping, evidence.fields, point.u);
      return { angle: point.angle, reach: Math.hypot(d.x, d.y), along: Math.abs(d[axis]) };
    });
  const least = Math.min(...served.map(({ reach }) => reach));
  const [nearest] = served
    .filter(({ reach }) => reach <= least + AS_TIGHT)
    .toSorted((one, other) => other.along - one.along);
  return nearest?.angle ?? null;
}

function servedBy(point: RimPoint, mapping: StickMapping, axis: 'x' | 'y', end: 'min' | 'max'): boolean {
  const fromCentre = point.u[axis] - mapping[axis].centre;
  return end === 'max' ? fromCentre > 0 : fromCentre < 0;
}

/** A count at the end of its field may stand for a larger travel: then the edge is only "at least". */
function censoredSays({ evidence }: Grounds, axis: 'x' | 'y', end: 'min' | 'max'): string {
  const field: AxisField = evidence.fields[axis];
  const key = `${axis}${end === 'min' ? 'Min' : 'Max'}` as const;
  const turns = evidence.rim?.turns ?? [];
  const limit = end === 'min' ? field.minimum : field.maximum;
  const atLimit = turns.filter((turn) =>
    end === 'min' ? turn.extremes[key] <= limit : turn.extremes[key] >= limit,
  ).length;
  return atLimit === 0
    ? ''
    : ` The count stands at the end of its field in ${atLimit} of ${turns.length} turns: the stick may reach further than it shows.`;
}
