/** Pointing and keys: from a place or a key to one of the directions. */
import { directionStep, nearestDirection } from '../../core/geometry/directions.ts';

const STRIDE = 45;

/** Direction at an angle of an unrolled axis that ends at 360°, which is 0° again; null outside of it. */
export function directionAlong(angle: number): number | null {
  return angle < -directionStep / 2 || angle > 360 + directionStep / 2 ? null : nearestDirection(angle);
}

/** Where a key moves the direction; null for a key that does not. Left and right go along the unrolled axis. */
export function directionByKey(key: string, from: number): number | null {
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: directionStep,
    ArrowUp: directionStep,
    ArrowLeft: -directionStep,
    ArrowDown: -directionStep,
    PageUp: STRIDE,
    PageDown: -STRIDE,
  };
  if (key === 'Home') return 0;
  if (key === 'End') return 360 - directionStep;
  const step = steps[key];
  return step === undefined ? null : nearestDirection(from + step);
}
