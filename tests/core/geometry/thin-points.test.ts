import { describe, expect, it } from 'vitest';
import { findBestCentre } from '../../../core/geometry/best-centre.ts';
import { convexHull } from '../../../core/geometry/convex-hull.ts';
import { enclosingCircle } from '../../../core/geometry/enclosing-circle.ts';
import { maximumInscribed } from '../../../core/geometry/maximum-inscribed.ts';
import { minimumZone } from '../../../core/geometry/minimum-zone.ts';
import { bandAt } from '../../../core/geometry/radial-band.ts';
import { thinForHull, thinForNearest } from '../../../core/geometry/thin-points.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { expectWithin } from '../../support/expect-close.ts';
import { pairsOf } from '../../support/point-sets.ts';

const seed = 20_261_137;
const count = 2500;
const random = createRandom(seed);

/** Long sets about (300, −200), size about 100. */
const sets: Record<string, number[]> = {
  'a noisy ring': outline(() => 100 * (1 + 0.001 * random.normal())),
  'a rough ring': outline(() => 100 * (1 + 0.2 * (random.next() - 0.5))),
  'an exact circle': outline(() => 100),
  'an ellipse': outline((angle) => 90 / Math.hypot(0.9 * Math.cos(angle), Math.sin(angle))),
  'an eight-sided gate in whole counts': outline(
    (angle) => 100 / Math.cos(((angle + Math.PI / 8) % (Math.PI / 4)) - Math.PI / 8),
  ).map(Math.round),
  'a filled square': Array.from({ length: 2 * count }, (_, i) => (i % 2 === 0 ? 200 : -300) + 200 * random.next()),
  'half a ring': outline(() => 100 + random.normal()).filter((_, i, all) => all[i - (i % 2) + 1]! > -200),
  'a ring with its middle': [300, -200, ...outline(() => 100 + random.normal())],
};

function outline(radius: (angle: number) => number): number[] {
  return Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / count).flatMap((angle) => [
    300 + radius(angle) * Math.cos(angle),
    -200 + radius(angle) * Math.sin(angle),
  ]);
}

/** The hull by its definition: a pair is an edge if no point lies to its right; its corners, in any order. */
function isHullOf(hull: Float64Array, points: readonly number[]): boolean {
  const corners = pairsOf([...hull]);
  const given = new Set(pairsOf(points).map(String));
  return corners.every((from, i) => {
    const to = corners[(i + 1) % corners.length]!;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    const holds = pairsOf(points).every(
      ([x, y]) => (to[0] - from[0]) * (y - from[1]) - (to[1] - from[1]) * (x - from[0]) >= -1e-9 * length,
    );
    return given.has(String(from)) && holds;
  });
}

describe('thinForHull', () => {
  it('drops most points of a noisy ring', () => {
    expect(thinForHull(sets['a noisy ring']!).length).toBeLessThan(count);
  });

  it.each(Object.entries(sets))('keeps every corner of %s', (_name, points) => {
    expect(isHullOf(convexHull(points), points)).toBe(true);
  });
});

describe('thinForNearest', () => {
  it('drops most points of a noisy ring', () => {
    const thinned = thinForNearest(sets['a noisy ring']!, enclosingCircle(sets['a noisy ring']!)!)!;
    expect(thinned.points.length).toBeLessThan(count);
    expect(thinned.reach).toBeLessThan(2);
  });

  it('makes no statement of few points, of half a ring, and of a set with a point in its middle', () => {
    for (const points of [
      sets['an exact circle']!.slice(0, 100),
      sets['half a ring']!,
      sets['a ring with its middle']!,
    ]) {
      expect(thinForNearest(points, enclosingCircle(points)!)).toBeNull();
    }
  });

  it.each(Object.entries(sets))('keeps the nearest point of every centre within reach: %s', (_name, points) => {
    const circle = enclosingCircle(points)!;
    const thinned = thinForNearest(points, circle);
    const all = Float64Array.from(points);
    const kept = Float64Array.from(thinned?.points ?? points);
    for (let k = 0; k < 300; k += 1) {
      const far = (thinned?.reach ?? circle.radius) * Math.sqrt(random.next());
      const turn = 2 * Math.PI * random.next();
      const [x, y] = [circle.x + far * Math.cos(turn), circle.y + far * Math.sin(turn)];
      expectWithin(
        bandAt({ outer: kept, inner: kept }, x, y).least,
        bandAt({ outer: all, inner: all }, x, y).least,
        1e-11,
      );
    }
  });
});

describe('circles of thinned points', () => {
  it.each(Object.entries(sets))('are those of all points, searched over the whole hull: %s', (_name, points) => {
    const circle = enclosingCircle(points)!;
    const move = (value: number, i: number): number => (value - (i % 2 === 0 ? circle.x : circle.y)) / circle.radius;
    const all = Float64Array.from(points, move);
    const hull = convexHull(points).map(move);
    const zone = minimumZone(points)!;
    const inscribed = maximumInscribed(points)!;
    expectWithin(
      (zone.outer - zone.inner) / circle.radius,
      findBestCentre({ outer: hull, inner: all }, hull, 1)!.width,
      1e-12,
    );
    const empty = findBestCentre({ outer: new Float64Array(0), inner: all }, hull, 1)!;
    expectWithin(inscribed.radius / circle.radius, empty.least, 1e-12);
  });
});
