/** A measured stick under one mapping, as every chain meets it: what no chain changes is computed once. */
import type { Dwell, StickEvidence } from '../capture/evidence.ts';
import { deflectAxis } from '../mapping/deflect-axis.ts';
import { deflect, limitAxis } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { rawPoint } from '../mapping/raw-point.ts';
import { directionPoints } from '../measure/direction-points.ts';
import { meanRest, settledDwells } from '../measure/mean-rest.ts';
import { toleranceRadius } from '../measure/tolerance-radius.ts';
import type { Pair, StickFields } from '../pad/stick.ts';

export interface StickUnder {
  /** Limited deflections that were read in each release, x and y in turn, each once; empty without a release. */
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

export function stickUnder(evidence: StickEvidence, mapping: StickMapping): StickUnder {
  const { fields } = evidence;
  const settled = settledDwells(evidence);
  const releases = evidence.rest?.dwells ?? [];
  const read = releases.map(({ readings }) => deflectionsOf(readings, mapping, fields));
  const atRest = releases.length > 0 ? read : settled.map(({ readings }) => deflectionsOf(readings, mapping, fields));
  return {
    releases: read,
    largestAtRest: settled.length === 0 ? null : Math.max(...atRest.map(largest)),
    rest: settled.length === 0 ? null : deflect(mapping, fields, meanRest(settled)),
    toleranceRadius: toleranceRadius(evidence, mapping),
    gate: gatePoints(evidence, mapping),
  };
}

/** A stick at rest reads the same few counts again and again: each pair of them is deflected once. */
function deflectionsOf(readings: Dwell['readings'], { x, y }: StickMapping, fields: StickFields): Float64Array {
  const seen = new Map<number, Set<number>>();
  const deflections: number[] = [];
  for (let i = 0; i < readings.length; i += 2) {
    const [countX = Number.NaN, countY = Number.NaN] = [readings[i], readings[i + 1]];
    const ys = seen.get(countX);
    if (ys?.has(countY) === true) continue;
    if (ys === undefined) seen.set(countX, new Set([countY]));
    else ys.add(countY);
    deflections.push(limitAxis(deflectAxis(x, fields.x.up, countX)), limitAxis(deflectAxis(y, fields.y.up, countY)));
  }
  return Float64Array.from(deflections);
}

function largest(deflections: Float64Array): number {
  let most = 0;
  for (let i = 0; i < deflections.length; i += 2)
    most = Math.max(most, Math.sqrt((deflections[i] ?? 0) ** 2 + (deflections[i + 1] ?? 0) ** 2));
  return most;
}

function gatePoints({ rim, fields }: StickEvidence, mapping: StickMapping): GatePoint[] | null {
  if (rim === null) return null;
  return directionPoints(rim.turns).map(({ angle, point, state }) => ({
    angle,
    d: point === null ? null : deflect(mapping, fields, rawPoint(rim.about, fields, point)),
    covered: state === 'covered',
  }));
}
