import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexHull } from '../../../core/geometry/convex-hull.ts';
import { hullEdges, meetEdges } from '../../../core/geometry/hull-edges.ts';
import { latticePoints, pairsOf, retellPoints } from '../../support/point-sets.ts';

const seed = 20_261_129;

function cross(a: readonly [number, number], b: readonly [number, number], c: readonly [number, number]): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

describe('convexHull', () => {
  it('goes counter-clockwise from the leftmost corner, without points on edges or twice', () => {
    const square = [4, 0, 0, 0, 2, 0, 2, 2, 4, 4, 0, 4, 0, 0, 0, 2];
    expect([...convexHull(square)]).toEqual([0, 0, 4, 0, 4, 4, 0, 4]);
  });

  it('of points on a line is its two ends, of equal points one, of none nothing', () => {
    expect([...convexHull([1, 1, 3, 3, 2, 2, 1, 1])]).toEqual([1, 1, 3, 3]);
    expect([...convexHull([5, 1, 5, 9, 5, 3])]).toEqual([5, 1, 5, 9]);
    expect([...convexHull([7, 7, 7, 7])]).toEqual([7, 7]);
    expect([...convexHull([])]).toEqual([]);
  });

  it('turns left at every corner, holds every point and is made of points', () => {
    fc.assert(
      fc.property(latticePoints, (points) => {
        const corners = pairsOf([...convexHull(points)]);
        const all = pairsOf(points);
        for (const [x, y] of corners) expect(all.some((p) => p[0] === x && p[1] === y)).toBe(true);
        if (corners.length < 3) return;
        for (const [i, a] of corners.entries()) {
          const b = corners[(i + 1) % corners.length]!;
          expect(cross(a, b, corners[(i + 2) % corners.length]!)).toBeGreaterThan(0);
          for (const p of all) expect(cross(a, b, p)).toBeGreaterThanOrEqual(0);
        }
      }),
      { seed },
    );
  });

  it('is the same however the points are told', () => {
    fc.assert(
      fc.property(latticePoints, (points) => {
        expect(convexHull(retellPoints(points))).toEqual(convexHull(points));
      }),
      { seed },
    );
  });
});

describe('hull edges', () => {
  const edges = hullEdges(convexHull([0, 0, 4, 0, 4, 4, 0, 4]));

  it('tell how deep a point lies inside, below 0 outside', () => {
    expect(meetEdges(edges, 1, 2, 0).depth).toBe(1);
    expect(meetEdges(edges, 2, 4, 0).depth).toBe(0);
    expect(meetEdges(edges, 5, 2, 0).depth).toBe(-1);
  });

  it('keep those that a disc about the point meets', () => {
    expect(meetEdges(edges, 1, 2, 0.5).edges).toHaveLength(0);
    expect(meetEdges(edges, 1, 2, 1.5).edges).toHaveLength(3);
    expect(meetEdges(edges, 2, 2, 9).edges).toHaveLength(12);
  });
});
