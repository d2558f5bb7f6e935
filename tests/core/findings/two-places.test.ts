import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { twoPlaces } from '../../../core/findings/two-places.ts';
import type { Pair } from '../../../core/pad/stick.ts';

const at = (x: number, y: number): Pair => ({ x, y });
/** Four about (0, 0) and two about (30, 40): along the line between them they scatter by ±1. */
const clouds = [at(0.6, 0.8), at(-0.6, -0.8), at(0.6, 0.8), at(-0.6, -0.8), at(30.6, 40.8), at(29.4, 39.2)];

describe('twoPlaces', () => {
  it('finds the way from the place with more points to that with fewer, and the scatter within both', () => {
    const found = twoPlaces(clouds)!;
    expect(found.x).toBeCloseTo(30, 12);
    expect(found.y).toBeCloseTo(40, 12);
    expect(found.fewer).toBe(2);
    // Six squares of 1 over four degrees of freedom.
    expect(found.sigma).toBeCloseTo(Math.sqrt(6 / 4), 9);
  });

  it('counts the scatter along the line alone', () => {
    const beside = clouds.map(({ x, y }, i) => at(x + (i % 2 === 0 ? 0.8 : -0.8), y + (i % 2 === 0 ? -0.6 : 0.6)));
    expect(twoPlaces(beside)!.sigma).toBeCloseTo(Math.sqrt(6 / 4), 2);
  });

  it('cuts where the squares within are least, not in the middle', () => {
    const along = [0, 1, 2, 3, 4, 5, 6, 7, 8, 40].map((x) => at(x, 0));
    expect(twoPlaces(along)).toMatchObject({ x: 36, fewer: 1 });
  });

  it('says nothing of fewer than six points, and no distance of one point many times', () => {
    expect(twoPlaces(clouds.slice(0, 5))).toBeNull();
    expect(twoPlaces(Array<Pair>(6).fill(at(3, 4)))).toMatchObject({ x: 0, y: 0, sigma: 0 });
  });

  it('moves and turns with the points', () => {
    const cloud = fc.record({
      distance: fc.integer({ min: 20, max: 200 }),
      angle: fc.double({ min: 0, max: 6.28, noNaN: true }),
      more: fc.integer({ min: 4, max: 12 }),
      x: fc.integer({ min: -500, max: 500 }),
    });
    fc.assert(
      fc.property(cloud, ({ distance, angle, more, x }) => {
        const way = at(distance * Math.cos(angle), distance * Math.sin(angle));
        const points = Array.from({ length: more + 3 }, (_, i) => {
          const off = at(x + Math.cos(2.4 * i), Math.sin(2.4 * i) - x);
          return i < more ? off : at(off.x + way.x, off.y + way.y);
        });
        const found = twoPlaces(points)!;
        expect(found.fewer).toBe(3);
        expect(Math.hypot(found.x - way.x, found.y - way.y)).toBeLessThan(2);
        const turned = twoPlaces(points.map((point) => at(-point.y, point.x)))!;
        expect([turned.x, turned.y]).toEqual([expect.closeTo(-found.y, 6), expect.closeTo(found.x, 6)]);
        expect(turned.sigma).toBeCloseTo(found.sigma, 9);
      }),
      { seed: 61, numRuns: 200 },
    );
  });
});
