/** What the counts do while the stick lies still. */
import type { Dwell } from '../capture/evidence/evidence.ts';
import type { Pair } from '../pad/stick.ts';
import type { RestMeasure } from './rest-measure.ts';

/**
 * Pooled σ within the dwells, counts: √(Σ(r − 1)s²/Σ(r − 1)) over the dwells with a variance of their own, r their
 * reports. Null where none has one (fewer than 20 reports in each), and on an axis whose count never changed: its noise is
 * below the step, not zero.
 */
export function pooledNoise(dwells: readonly Dwell[]): RestMeasure['noise'] {
  let degrees = 0;
  let x = 0;
  let y = 0;
  for (const { reports, variance } of dwells) {
    if (variance === null) continue;
    degrees += reports - 1;
    x += (reports - 1) * variance.x;
    y += (reports - 1) * variance.y;
  }
  if (degrees === 0) return null;
  return { x: x === 0 ? null : Math.sqrt(x / degrees), y: y === 0 ? null : Math.sqrt(y / degrees) };
}

/**
 * Whether the noise of each axis is too small for its step q to tell: σ of the counts below q/√12, what rounding alone
 * leaves, or never more than two neighbouring counts, between which a rest at their border makes up to q/2 of any noise.
 * Null where the noise is not known at all.
 */
export function noiseBelowStep(noise: RestMeasure['noise'], widest: Pair, step: Pair): RestMeasure['noiseBelowStep'] {
  if (noise === null) return null;
  return { x: isBelow(noise.x, widest.x, step.x), y: isBelow(noise.y, widest.y, step.y) };
}

function isBelow(noise: number | null, widest: number, step: number): boolean {
  return noise === null || noise < step / Math.sqrt(12) || widest <= step;
}

/** Largest difference between two readings of one dwell, counts. */
export function peakToPeak(dwells: readonly Dwell[]): Pair {
  return {
    x: Math.max(...dwells.map(({ least, greatest }) => greatest.x - least.x)),
    y: Math.max(...dwells.map(({ least, greatest }) => greatest.y - least.y)),
  };
}
