/** Pointing and keys: from a place or a key to one of the 72 directions. */
import { toDirection } from '../frame/address.ts';

const STEP = 5;
const STRIDE = 45;

/** Direction at an angle of an unrolled axis that ends at 360°, which is 0° again; null outside of it. */
export function directionAlong(angle: number): number | null {
  return angle < -STEP / 2 || angle > 360 + STEP / 2 ? null : toDirection(angle);
}

/** Where a key moves the direction; null for a key that does not. Left and right go along the unrolled axis. */
export function directionByKey(key: string, from: number): number | null {
  const steps: Readonly<Record<string, number>> = {
    ArrowRight: STEP,
    ArrowUp: STEP,
    ArrowLeft: -STEP,
    ArrowDown: -STEP,
    PageUp: STRIDE,
    PageDown: -STRIDE,
  };
  if (key === 'Home') return 0;
  if (key === 'End') return 360 - STEP;
  const step = steps[key];
  return step === undefined ? null : toDirection(from + step);
}
