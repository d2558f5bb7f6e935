/** What one direction of the rim reaches under a mapping. */
import { angleOf } from '../geometry/angle.ts';
import { deflect, limit } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { rawPoint } from '../mapping/raw-point.ts';
import { standardDeviation } from '../numeric/variance.ts';
import type { AxisField, Pair, StickFields } from '../pad/stick.ts';
import type { DirectionPoint } from './direction-points.ts';
import type { DirectionMeasure } from './rim-measure.ts';

/** A count within this of a field's limit stands at it: room for the rounding of differences, far below a count. */
const AT_LIMIT = 1e-6;

/** A direction with the reach of every turn, from which the measures over turns are taken. */
export interface DirectionReach {
  readonly measure: DirectionMeasure;
  readonly clockwise: readonly number[];
  readonly counterClockwise: readonly number[];
}

/** Reach = |free d| of the rim point, `seen` = |limited d|, outputAngle = direction of d, spread = sample σ of the reach over turns. */
export function reachDirection(
  from: DirectionPoint,
  about: Pair,
  mapping: StickMapping,
  fields: StickFields,
): DirectionReach {
  const reachOf = (difference: Pair): number => {
    const d = deflect(mapping, fields, rawPoint(about, fields, difference));
    return Math.hypot(d.x, d.y);
  };
  const clockwise = from.clockwise.map(reachOf);
  const counterClockwise = from.counterClockwise.map(reachOf);
  const { angle, point, state } = from;
  const covered = state === 'covered';
  const all = [...clockwise, ...counterClockwise];
  const spread = all.length < 2 ? null : standardDeviation(all);
  if (point === null) return { measure: { ...empty, angle, state, covered }, clockwise, counterClockwise };
  const raw = rawPoint(about, fields, point);
  const d = deflect(mapping, fields, raw);
  const limited = limit(d);
  return {
    measure: {
      angle,
      x: point.x,
      y: point.y,
      reach: Math.hypot(d.x, d.y),
      seen: Math.hypot(limited.x, limited.y),
      outputAngle: angleOf(d.x, d.y),
      spread,
      state,
      covered,
      atLimit: isAtLimit(fields.x, raw.x) || isAtLimit(fields.y, raw.y),
    },
    clockwise,
    counterClockwise,
  };
}

const empty = { x: null, y: null, reach: null, seen: null, outputAngle: null, spread: null, atLimit: false };

function isAtLimit(field: AxisField, count: number): boolean {
  return count <= field.minimum + AT_LIMIT || count >= field.maximum - AT_LIMIT;
}
