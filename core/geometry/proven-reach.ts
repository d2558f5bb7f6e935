import { convexHull } from './convex-hull.ts';
import type { Contact } from './linear-view.ts';
import type { Band } from './radial-band.ts';

/** Contacts differ from the band's edge by rounding alone. Points here have size about 1. */
const touching = 1e-13;

/**
 * How far from a centre no other centre can have a narrower band, proven by the points the band rests on there; 0 without proof.
 * With w = u(inner) − u(outer) over pairs of contacts (u(inner) alone without outer points), a move δ widens the band to at least
 * width + max w·δ − δ²/(2·least distance). The least of max w·e over unit vectors e is the distance s from the origin to the
 * edge of the hull of the w: nothing is gained up to δ = 2·s·(least distance).
 */
export function provenReach(band: Band, contacts: readonly Contact[]): number {
  const outer = contacts.filter((c) => c.side === 'outer' && c.distance >= band.greatest - touching);
  const inner = contacts.filter((c) => c.side === 'inner' && c.distance <= band.least + touching);
  const from = outer.length > 0 || band.greatest > 0 ? outer : [{ x: 0, y: 0 }];
  const hull = convexHull(inner.flatMap((i) => from.flatMap((o) => [i.x - o.x, i.y - o.y])));
  if (hull.length < 6) return 0;
  let sharpness = Infinity;
  for (let k = 0; k < hull.length; k += 2) {
    const ax = hull[k] ?? NaN;
    const ay = hull[k + 1] ?? NaN;
    const bx = hull[(k + 2) % hull.length] ?? NaN;
    const by = hull[(k + 3) % hull.length] ?? NaN;
    sharpness = Math.min(sharpness, (ax * by - ay * bx) / Math.hypot(bx - ax, by - ay));
  }
  return Math.max(0, 2 * sharpness * band.least);
}
