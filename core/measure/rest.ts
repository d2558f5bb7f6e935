/** Measures the rest of one stick. */
import type { Dwell, StickEvidence } from '../capture/evidence/evidence.ts';
import { enclosingCircle } from '../geometry/enclosing-circle.ts';
import { deflect } from '../mapping/deflect.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { covariance2 } from '../numeric/covariance.ts';
import type { Pair, StickFields } from '../pad/stick.ts';
import { axisDrift, type AxisDrift } from './axis-drift.ts';
import { meanRest, settledDwells } from './mean-rest.ts';
import { meanUncertainty95 } from './mean-uncertainty.ts';
import { largestAtRest } from './rest-deflection.ts';
import { restHysteresis } from './rest-hysteresis.ts';
import type { RestMeasure } from './rest-measure.ts';
import { noiseBelowStep, peakToPeak, pooledNoise } from './rest-noise.ts';
import { toleranceRadius } from './tolerance-radius.ts';

/**
 * Null without a settled stretch. Releases are the independent units, each counted once; of a stick that only lay still
 * (`still` of the evidence) there are 0 releases, a point, its noise and offset, and null for everything that releases prove. Positions (`point`, `enclosing`)
 * are raw counts as reported; differences (`covariance`, `hysteresis`, `drift`) have x right and y up. `offset` is the
 * deflection of the mean rest under the mapping. From one release there is a point without an uncertainty; the tolerance
 * radius takes twelve, and of leaks only the bound says how much a few releases prove.
 */
export function measureRest(evidence: StickEvidence, mapping: StickMapping): RestMeasure | null {
  const releases = evidence.rest?.dwells ?? [];
  const dwells = settledDwells(evidence);
  const enclosing = enclosingCircle(flatPoints(dwells));
  if (enclosing === null) return null;
  const { fields } = evidence;
  const point = meanRest(dwells);
  const step = evidence.step ?? { x: 1, y: 1 };
  const noise = pooledNoise(dwells);
  const seconds = releases.map(({ startUs, endUs }) => (startUs + endUs) / 2e6);
  const xs = releases.map((release) => release.point.x);
  const ys = releases.map((release) => release.point.y);
  const xDrift = axisDrift(seconds, xs);
  const yDrift = axisDrift(seconds, ys);
  return {
    releases: releases.length,
    point,
    u95: { x: meanUncertainty95(xs, step.x, xDrift), y: meanUncertainty95(ys, step.y, yDrift) },
    step,
    enclosing,
    covariance: upCovariance(releases, fields),
    noise,
    noiseBelowStep: noiseBelowStep(noise, peakToPeak(dwells), step),
    peakToPeak: peakToPeak(dwells),
    hysteresis: restHysteresis(releases, fields),
    drift: upDrift(xDrift, yDrift, fields),
    offset: offsetOf(point, dwells, mapping, fields),
    toleranceRadius: toleranceRadius(evidence, mapping),
  };
}

function flatPoints(dwells: readonly Dwell[]): number[] {
  return dwells.flatMap(({ point }) => [point.x, point.y]);
}

function upCovariance(releases: readonly Dwell[], fields: StickFields): RestMeasure['covariance'] {
  const covariance = covariance2(flatPoints(releases));
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
