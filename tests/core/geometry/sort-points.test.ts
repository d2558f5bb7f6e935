import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sortPoints } from '../../../core/geometry/sort-points.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { pairsOf } from '../../support/point-sets.ts';

const seed = 20_261_136;

/** Plain: every pair compared as text of its numbers once, then sorted. */
function plainly(points: readonly number[]): number[] {
  const distinct = new Map(pairsOf(points).map((pair) => [`${String(pair[0] + 0)} ${String(pair[1] + 0)}`, pair]));
  return [...distinct.values()].toSorted(([ax, ay], [bx, by]) => ax - bx || ay - by).flat();
}

describe('sortPoints', () => {
  const coordinates: Record<string, fc.Arbitrary<number>> = {
    'of a small lattice': fc.integer({ min: -3, max: 3 }),
    'of any size': fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }),
    'close together far away': fc.integer({ min: 0, max: 500 }).map((value) => 1e9 + value / 1024),
  };

  it.each(Object.entries(coordinates))('orders by x, then y, and drops duplicates: numbers %s', (_name, coordinate) => {
    const pairs = fc.array(fc.tuple(coordinate, coordinate), { maxLength: 120 }).map((points) => points.flat());
    fc.assert(
      fc.property(pairs, (points) => {
        expect(Array.from(sortPoints(points), (value) => value + 0)).toEqual(plainly(points).map((value) => value + 0));
      }),
      { seed },
    );
  });

  it('orders long sets: along a line, on one column, on a gate, in clusters', () => {
    const random = createRandom(seed);
    const makers: ((k: number) => [number, number])[] = [
      (k) => [k % 977, -(k % 31)],
      (k) => [5, (k * 7919) % 6007],
      (k) => [Math.round(128 + 100 * Math.cos(k)), Math.round(128 + 100 * Math.sin(k))],
      () => [Math.round(random.normal() * 1e6) / 1e6, random.normal() > 0 ? 1e6 : -1e-6],
    ];
    for (const make of makers) {
      const points = Array.from({ length: 5000 }, (_, k) => make(k)).flat();
      expect([...sortPoints(points)]).toEqual(plainly(points));
    }
  });
});
