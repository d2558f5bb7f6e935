/** A measured stick under one mapping, as every chain meets it: what no chain changes is computed once. */
import { waysAlong } from '../capture/evidence/ways-along.ts';
import type { Dwell, StickEvidence } from '../capture/evidence/evidence.ts';
import { deflectAxis } from '../mapping/deflect-axis.ts';
import { deflect, limitAxis } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { rawPoint } from '../mapping/raw-point.ts';
import { directionPoints } from '../measure/direction-points.ts';
import { meanRest, settledDwells } from '../measure/mean-rest.ts';
import { toleranceRadius } from '../measure/tolerance-radius.ts';
import type { Pair, StickFields } from '../pad/stick.ts';

export interface StickUnder {
  /** Limited deflections that were read in each release, x and y in turn; empty without a release. */
  readonly releases: readonly Float64Array[];
  /** Largest limited |d| of the settled readings, of a stick that nobody let go those of its still stretches; null without any. */
  readonly largestAtRest: number | null;
  /** Free deflection of the mean rest; null without a settled reading. */
  readonly rest: Pair | null;
  readonly toleranceRadius: number | null;
  /** By direction; null without a rim. */
  readonly gate: readonly GatePoint[] | null;
}

export interface GatePoint {
  readonly angle: number;
  /** Free deflection of the rim point; null where none was read. */
  readonly d: Pair | null;
  readonly covered: boolean;
}

/** `tolerance` is the tolerance radius under this mapping where it is known already. */
export function stickUnder(
  evidence: StickEvidence,
  mapping: StickMapping,
  tolerance = toleranceRadius(evidence, mapping),
): StickUnder {
  const { fields } = evidence;
  const settled = settledDwells(evidence);
  const releases = evidence.rest?.dwells ?? [];
  const read = releases.map((dwell) => deflectionsOf(dwell, mapping, fields));
  const atRest = releases.length > 0 ? read : settled.map((dwell) => deflectionsOf(dwell, mapping, fields));
  return {
    releases: read,
    largestAtRest: settled.length === 0 ? null : Math.max(...atRest.map(largest)),
    rest: settled.length === 0 ? null : deflect(mapping, fields, meanRest(settled)),
    toleranceRadius: tolerance,
    gate: gatePoints(evidence, mapping),
  };
}

function deflectionsOf({ readings }: Dwell, { x, y }: StickMapping, fields: StickFields): Float64Array {
  const deflections = new Float64Array(readings.length);
  for (let i = 0; i < readings.length; i += 2) {
    deflections[i] = limitAxis(deflectAxis(x, fields.x.up, readings[i] ?? Number.NaN));
    deflections[i + 1] = limitAxis(deflectAxis(y, fields.y.up, readings[i + 1] ?? Number.NaN));
  }
  return deflections;
}

function largest(deflections: Float64Array): number {
  let most = 0;
  for (let i = 0; i < deflections.length; i += 2)
    most = Math.max(most, Math.sqrt((deflections[i] ?? 0) ** 2 + (deflections[i + 1] ?? 0) ** 2));
  return most;
}

function gatePoints({ rim, fields }: StickEvidence, mapping: StickMapping): GatePoint[] | null {
  if (rim === null) return null;
  return directionPoints(waysAlong(rim)).map(({ angle, point, state }) => ({
    angle,
    d: point === null ? null : deflect(mapping, fields, rawPoint(rim.about, fields, point)),
    covered: state === 'covered',
  }));
}
