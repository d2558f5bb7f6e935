/** From the standings of a stick to what each figure is drawn from. */
import type { StickEvidence } from '../../core/capture/evidence/evidence.ts';
import { directionAngles } from '../../core/geometry/directions.ts';
import type { Domain, Pair, StickFields } from '../../core/pad/stick.ts';
import type { PlaneInput, PlaneSeries } from '../../core/plot/plane-input.ts';
import type { ProfileInput } from '../../core/plot/profile-figure.ts';
import type { RailsInput } from '../../core/plot/rails-figure.ts';
import type { Chain } from '../../core/zones/chain.ts';
import { deadOutline } from '../../core/zones/dead-outline.ts';
import { zoneOf } from '../../core/zones/one-zone.ts';
import { compileChain } from '../../core/zones/run-chain.ts';
import { circleOutline, zoneOutline } from '../../core/zones/draw-back.ts';
import { isAtLeast } from '../stick/at-least.ts';
import type { Standing } from '../stick/standing.ts';

export function profileInput(standings: readonly Standing[], domain: Domain): ProfileInput {
  const first = standings[0]?.rim?.directions ?? [];
  return {
    series: standings.map(({ tone, rim, zones }) => ({
      tone,
      reach: directionAngles.map((_, index) => rim?.directions[index]?.reach ?? null),
      spread: directionAngles.map((_, index) => rim?.directions[index]?.spread ?? null),
      onset: zones.onset?.map(({ deflection }) => deflection) ?? null,
    })),
    states: directionAngles.map((_, index) => first[index]?.state ?? 'none'),
    atLeast: directionAngles.map((angle) => isAtLeast(standings[0], angle, domain)),
  };
}

/** `before` is the evidence of the survey that is compared with, or null. */
export function planeInput(
  evidence: StickEvidence,
  standings: readonly Standing[],
  chain: Chain,
  before: StickEvidence | null = null,
): PlaneInput {
  const { fields } = evidence;
  return {
    fields,
    series: standings.map((standing) => planeSeries(standing, fields, chain)),
    rests: restPoints(evidence),
    trace: evidence.rim?.trace ?? null,
    before: before === null ? null : { trace: before.rim?.trace ?? null, rests: restPoints(before) },
    about: evidence.rim?.about ?? standings[0]?.rest?.point ?? middle(fields),
  };
}

function restPoints({ rest }: StickEvidence): Pair[] {
  return rest?.dwells.map((dwell) => dwell.point) ?? [];
}

const outlined = new WeakMap<Standing, { readonly chain: Chain; readonly series: PlaneSeries }>();

/** A nudge changes the outlines of yours alone; those of the others are drawn back once. */
function planeSeries(standing: Standing, fields: StickFields, chain: Chain): PlaneSeries {
  const known = outlined.get(standing);
  if (known?.chain === chain) return known.series;
  const { tone, mapping } = standing;
  const series = {
    tone,
    unit: circleOutline(mapping, fields, 1),
    zone: outlineOf(mapping, fields, chain),
    centre: { x: mapping.x.centre, y: mapping.y.centre },
  };
  outlined.set(standing, { chain, series });
  return series;
}

function middle(fields: StickFields): Pair {
  return { x: (fields.x.minimum + fields.x.maximum) / 2, y: (fields.y.minimum + fields.y.maximum) / 2 };
}

export function railsInput(evidence: StickEvidence, standings: readonly Standing[]): RailsInput {
  const turns = evidence.rim?.turns ?? [];
  const extremes = turns.map((turn) => turn.extremes);
  return {
    fields: evidence.fields,
    series: standings.map(({ tone, mapping }) => ({ tone, mapping })),
    extents:
      extremes.length === 0
        ? null
        : {
            xMin: Math.min(...extremes.map((extreme) => extreme.xMin)),
            xMax: Math.max(...extremes.map((extreme) => extreme.xMax)),
            yMin: Math.min(...extremes.map((extreme) => extreme.yMin)),
            yMax: Math.max(...extremes.map((extreme) => extreme.yMax)),
          },
    rests: restPoints(evidence),
  };
}

/** Where nothing comes out around the centre; null where something always does. */
function outlineOf(mapping: Standing['mapping'], fields: StickFields, chain: Chain): readonly number[] | null {
  const zone = zoneOf(chain);
  if (zone === null) return deadOutline(mapping, fields, compileChain(chain));
  return zone.inner === 0 ? null : zoneOutline(mapping, fields, zone);
}
