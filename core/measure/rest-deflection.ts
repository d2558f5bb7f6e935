/** The settled readings of a stick as deflections under a mapping. */
import type { Dwell } from '../capture/evidence/evidence.ts';
import { deflectAxis } from '../mapping/deflect-axis.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import type { StickFields } from '../pad/stick.ts';

/** Largest |d| (free) over all settled readings; a fraction. 0 without any. */
export function largestAtRest(dwells: readonly Dwell[], mapping: StickMapping, fields: StickFields): number {
  let largest = 0;
  for (const { readings } of dwells)
    for (let i = 0; i < readings.length; i += 2) {
      const x = deflectAxis(mapping.x, fields.x.up, readings[i] ?? Number.NaN);
      const y = deflectAxis(mapping.y, fields.y.up, readings[i + 1] ?? Number.NaN);
      largest = Math.max(largest, Math.sqrt(x * x + y * y));
    }
  return largest;
}

/** Largest |d(reading) − d(dwell mean)| over all settled readings: how far the noise carries the output from the rest point. */
export function largestDeparture(dwells: readonly Dwell[], mapping: StickMapping, fields: StickFields): number {
  let largest = 0;
  for (const { point, readings } of dwells) {
    const xMean = deflectAxis(mapping.x, fields.x.up, point.x);
    const yMean = deflectAxis(mapping.y, fields.y.up, point.y);
    for (let i = 0; i < readings.length; i += 2) {
      const x = deflectAxis(mapping.x, fields.x.up, readings[i] ?? Number.NaN) - xMean;
      const y = deflectAxis(mapping.y, fields.y.up, readings[i + 1] ?? Number.NaN) - yMean;
      largest = Math.max(largest, Math.sqrt(x * x + y * y));
    }
  }
  return largest;
}
