import { angleOf } from './angle.ts';

/** Mean of directions: its angle in degrees, [0, 360), and the mean resultant length, 1 for equal directions, 0 for none. */
export interface MeanDirection {
  readonly angle: number;
  readonly resultant: number;
}

/**
 * Mean direction of angles in degrees: that of the sum of their unit vectors, each times its weight (1 unless given).
 * Null without angles, or where they cancel out to rounding: then there is no direction.
 * Source: Mardia and Jupp, Directional Statistics; Zar, Biostatistical Analysis, ch. 26.
 */
export function meanDirection(angles: ArrayLike<number>, weights?: ArrayLike<number>): MeanDirection | null {
  let x = 0;
  let y = 0;
  let total = 0;
  for (let i = 0; i < angles.length; i += 1) {
    const radians = ((angles[i] ?? NaN) * Math.PI) / 180;
    const weight = weights === undefined ? 1 : (weights[i] ?? NaN);
    x += weight * Math.cos(radians);
    y += weight * Math.sin(radians);
    total += weight;
  }
  const resultant = Math.hypot(x, y) / total;
  return resultant > 1e-14 ? { angle: angleOf(x, y), resultant } : null;
}
