/** What the counts do while the stick lies still. */
import type { Dwell } from '../capture/evidence.ts';
import type { Pair } from '../pad/stick.ts';

/**
 * Pooled σ within the dwells, counts: √(Σ(r − 1)s²/Σ(r − 1)) over the dwells with a variance of their own, r their
 * reports. Null where none has one (fewer than 20 reports in each).
 */
export function pooledNoise(dwells: readonly Dwell[]): Pair | null {
  let degrees = 0;
  let x = 0;
  let y = 0;
  for (const { reports, variance } of dwells) {
    if (variance === null) continue;
    degrees += reports - 1;
    x += (reports - 1) * variance.x;
    y += (reports - 1) * variance.y;
  }
  return degrees === 0 ? null : { x: Math.sqrt(x / degrees), y: Math.sqrt(y / degrees) };
}

/** Largest difference between two readings of one dwell, counts. */
export function peakToPeak(dwells: readonly Dwell[]): Pair {
  return {
    x: Math.max(...dwells.map(({ least, greatest }) => greatest.x - least.x)),
    y: Math.max(...dwells.map(({ least, greatest }) => greatest.y - least.y)),
  };
}
