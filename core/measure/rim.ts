/** Measures the rim of one stick. */
import { waysAlong } from '../capture/evidence/ways-along.ts';
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { reachDirection } from './direction-measure.ts';
import { directionPoints } from './direction-points.ts';
import { headroom } from './headroom.ts';
import { rimErrors } from './rim-errors.ts';
import type { RimMeasure } from './rim-measure.ts';
import { directionHysteresis, pooledSpread, turnErrors } from './rim-repeatability.ts';
import { skewOf } from './skew.ts';

/**
 * Null without a rim capture. Directions that are not covered keep what was read in them and their state, and stay out of
 * every figure over directions; those figures are null while none is covered.
 */
export function measureRim(evidence: StickEvidence, mapping: StickMapping): RimMeasure | null {
  const { rim, fields } = evidence;
  if (rim === null) return null;
  const reaches = directionPoints(waysAlong(rim)).map((one) => reachDirection(one, rim.about, mapping, fields));
  const directions = reaches.map(({ measure }) => measure);
  const clockwise = rim.turns.filter((turn) => turn.way === 'clockwise').length;
  const { spread, degrees } = pooledSpread(reaches);
  const { circle, ellipse, roundness } = rim.shape;
  return {
    turns: { clockwise, counterClockwise: rim.turns.length - clockwise },
    directions,
    ...rimErrors(directions),
    pooledSpread: spread,
    pooledDegrees: degrees,
    directionHysteresis: directionHysteresis(reaches),
    turnErrors: turnErrors(reaches),
    headroom: headroom(rim.turns, fields),
    circle,
    ellipse,
    skew: skewOf(ellipse),
    roundness,
  };
}
