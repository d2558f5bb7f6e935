/** The directions about one of them. */
import { directionAngles } from '../geometry/directions.ts';

/** Those within so many degrees of an angle, in order from 0. */
export function directionsAbout(angle: number, within: number): number[] {
  return directionAngles.filter((direction) => {
    const off = Math.abs(((((direction - angle + 180) % 360) + 360) % 360) - 180);
    return off <= within;
  });
}
