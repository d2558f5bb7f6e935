/** How much of each axis appears on the other, from the readings along the gate. */
import type { Turn } from '../capture/evidence/evidence.ts';

const LEAST_POINTS = 24;

/** Share k, signed; null with too few points along the gate. See `findAxesTogether`. */
export function axesTogether(turns: readonly Turn[]): number | null {
  const points = turns.flatMap((turn) => turn.points.flatMap((point) => point ?? []));
  if (points.length < LEAST_POINTS) return null;
  const mean = (axis: 'x' | 'y'): number => points.reduce((sum, point) => sum + point[axis], 0) / points.length;
  const [mx, my] = [mean('x'), mean('y')];
  let [xx, xy, yy] = [0, 0, 0];
  for (const { x, y } of points) {
    xx += (x - mx) ** 2;
    xy += (x - mx) * (y - my);
    yy += (y - my) ** 2;
  }
  if (xx === 0 || yy === 0) return null;
  const r = Math.max(-1, Math.min(1, xy / Math.sqrt(xx * yy)));
  return r === 0 ? 0 : (1 - Math.sqrt(1 - r * r)) / r;
}
