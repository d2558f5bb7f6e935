/** Measures the rest of one stick. */
import type { Dwell, StickEvidence } from '../capture/evidence.ts';
import { enclosingCircle } from '../geometry/enclosing-circle.ts';
import { deflect } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { covariance2 } from '../numeric/covariance.ts';
import type { Pair, StickFields } from '../pad/stick.ts';
import { axisDrift, type AxisDrift } from './axis-drift.ts';
import { effectiveSteps } from './effective-step.ts';
import { meanRest } from './mean-rest.ts';
import { meanUncertainty95 } from './mean-uncertainty.ts';
import { largestAtRest } from './rest-deflection.ts';
import { restHysteresis } from './rest-hysteresis.ts';
import type { RestMeasure } from './rest-measure.ts';
import { peakToPeak, pooledNoise } from './rest-noise.ts';
import { toleranceRadius } from './tolerance-radius.ts';

/**
 * Null without a settled release. Releases are the independent units, each counted once. Positions (`point`, `enclosing`)
 * are raw counts as reported; differences (`covariance`, `hysteresis`, `drift`) have x right and y up. `offset` is the
 * deflection of the mean rest under the mapping. From one release there is a point without an uncertainty; the tolerance
 * radius takes twelve, and of leaks only the bound says how much a few releases prove.
 */
export function measureRest(evidence: StickEvidence, mapping: StickMapping): RestMeasure | null {
  const dwells = evidence.rest?.dwells ?? [];
  const points = dwells.flatMap(({ point }) => [point.x, point.y]);
  const enclosing = enclosingCircle(points);
  if (enclosing === null) return null;
  const { fields } = evidence;
  const point = meanRest(dwells);
  const step = effectiveSteps(evidence);
  const seconds = dwells.map(({ startUs, endUs }) => (startUs + endUs) / 2e6);
  const xs = dwells.map((dwell) => dwell.point.x);
  const ys = dwells.map((dwell) => dwell.point.y);
  const xDrift = axisDrift(seconds, xs);
  const yDrift = axisDrift(seconds, ys);
  return {
    releases: dwells.length,
    point,
    u95: { x: meanUncertainty95(xs, step.x, xDrift), y: meanUncertainty95(ys, step.y, yDrift) },
    step,
    enclosing,
    covariance: upCovariance(points, fields),
    noise: pooledNoise(dwells),
    peakToPeak: peakToPeak(dwells),
    hysteresis: restHysteresis(dwells, fields),
    drift: upDrift(xDrift, yDrift, fields),
    offset: offsetOf(point, dwells, mapping, fields),
    toleranceRadius: toleranceRadius(evidence, mapping),
  };
}

function upCovariance(points: readonly number[], fields: StickFields): RestMeasure['covariance'] {
  const covariance = covariance2(points);
  return covariance === null ? null : { ...covariance, xy: fields.x.up * fields.y.up * covariance.xy + 0 };
}

function upDrift(x: AxisDrift | null, y: AxisDrift | null, fields: StickFields): RestMeasure['drift'] {
  if (x === null || y === null) return null;
  return { x: fields.x.up * x.slope + 0, y: fields.y.up * y.slope + 0, u95: { x: x.u95, y: y.u95 } };
}

function offsetOf(
  point: Pair,
  dwells: readonly Dwell[],
  mapping: StickMapping,
  fields: StickFields,
): RestMeasure['offset'] {
  const { x, y } = deflect(mapping, fields, point);
  return { x, y, magnitude: Math.hypot(x, y), largest: largestAtRest(dwells, mapping, fields) };
}
