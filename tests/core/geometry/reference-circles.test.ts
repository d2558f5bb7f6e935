import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexHull } from '../../../core/geometry/convex-hull.ts';
import { hullEdges, meetEdges } from '../../../core/geometry/hull-edges.ts';
import { maximumInscribed } from '../../../core/geometry/maximum-inscribed.ts';
import { minimumZone, type Zone } from '../../../core/geometry/minimum-zone.ts';
import { bandAt } from '../../../core/geometry/radial-band.ts';
import { bruteInscribedRadius, bruteZoneWidth } from '../../support/brute-circles.ts';
import { expectWithin } from '../../support/expect-close.ts';
import { anyMove, latticePoints, movePoints, pairsOf, retellPoints, ringPoints } from '../../support/point-sets.ts';

const seed = 20_261_133;
const settings = { seed, numRuns: 60 };

function insideHull(points: readonly number[]): (x: number, y: number) => boolean {
  const edges = hullEdges(convexHull(points));
  return (x, y) => meetEdges(edges, x, y, 0).depth >= 0;
}

/** Lattice points with room inside. */
const latticeSets = latticePoints.filter((points) => convexHull(points).length >= 6);

function widthOf(points: readonly number[]): number {
  const { inner, outer } = minimumZone(points)!;
  return outer - inner;
}

/** How often the points that touch a zone change from its outer to its inner circle on the way round. */
function sidesOf(points: readonly number[], zone: Zone): number {
  const size = 1e-12 * Math.max(1, zone.outer);
  const sides = pairsOf(points)
    .map(([px, py]) => ({
      angle: Math.atan2(py - zone.y, px - zone.x),
      distance: Math.hypot(px - zone.x, py - zone.y),
    }))
    .toSorted((one, other) => one.angle - other.angle)
    .flatMap(({ distance }) => {
      if (distance > zone.outer - size) return ['outer'];
      return distance < zone.inner + size ? ['inner'] : [];
    });
  return sides.filter((side, i) => side !== sides[(i + 1) % sides.length]).length;
}

describe('minimumZone', () => {
  it('is 0 wide where all points lie on a circle', () => {
    const zone = minimumZone([3, 4, -3, 4, 5, 0, -5, 0, 0, -5])!;
    expectWithin(zone.outer - zone.inner, 0, 1e-14);
    expectWithin(zone.outer, 5, 1e-14);
  });

  it('rests on two outer and two inner points that alternate in angle', () => {
    fc.assert(
      fc.property(ringPoints, (points) => {
        expect(sidesOf(points, minimumZone(points)!)).toBeGreaterThanOrEqual(4);
      }),
      settings,
    );
  });

  it('ends on an 8-bit gate about a rest between counts, whose valleys are long and nearly level', () => {
    const circle = Array.from({ length: 3000 }, (_, k) => (2 * Math.PI * k) / 3000);
    for (const [x, y, radius] of [
      [130, 122, 118],
      [127.5, 127.5, 128],
      [120, 131, 150],
    ] as const) {
      // As an 8-bit field tells it: whole counts, cut off at 0 and 255, most of them many times.
      const field = (value: number): number => Math.max(0, Math.min(255, Math.round(value)));
      const gate = circle.flatMap((t) => [field(x + radius * Math.cos(t)), field(y + radius * Math.sin(t))]);
      const inside = insideHull(gate);
      const width = widthOf(gate);
      for (let k = 0; k < 2000; k += 1) {
        const [cx, cy] = [127 + (k % 50) / 5 - 5, 126 + Math.floor(k / 50) / 4 - 5];
        if (inside(cx, cy)) expect(bandWidth(gate, cx, cy)).toBeGreaterThanOrEqual(width - 1e-11);
      }
      expect(sidesOf(gate, minimumZone(gate)!)).toBeGreaterThanOrEqual(4);
    }
  });

  it('agrees on rings with a search over all crossings of bisectors', () => {
    fc.assert(
      fc.property(ringPoints, (points) => {
        expectWithin(widthOf(points), bruteZoneWidth(points, insideHull(points)), 1e-11);
      }),
      settings,
    );
  });

  it('is never wider on a lattice than any crossing of bisectors or any centre tried at random', () => {
    fc.assert(
      fc.property(latticeSets, fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 1000 }), (points, u, v) => {
        const inside = insideHull(points);
        const least = Math.min(
          bruteZoneWidth(points, inside),
          inside(0.006 * u, 0.006 * v) ? bandWidth(points, 0.006 * u, 0.006 * v) : Infinity,
        );
        expect(widthOf(points)).toBeLessThanOrEqual(least + 1e-11);
      }),
      settings,
    );
  });

  it('follows turns, scales and shifts, and does not mind order or duplicates', () => {
    fc.assert(
      fc.property(fc.oneof(latticeSets, ringPoints), anyMove, (points, move) => {
        expectWithin(
          widthOf(retellPoints(movePoints(points, move))),
          move.scale * widthOf(points),
          1e-9 * (move.scale + 1),
        );
      }),
      settings,
    );
  });

  it('is null for fewer than three corners', () => {
    expect(minimumZone([])).toBeNull();
    expect(minimumZone([1, 1, 1, 1])).toBeNull();
    expect(minimumZone([0, 0, 1, 2, 2, 4, 5, 10])).toBeNull();
  });
});

describe('maximumInscribed', () => {
  it('touches the sides of a square of points', () => {
    const square = [-2, -2, 0, -2, 2, -2, 2, 0, 2, 2, 0, 2, -2, 2, -2, 0];
    const circle = maximumInscribed(square)!;
    expectWithin(circle.x, 0, 1e-14);
    expectWithin(circle.y, 0, 1e-14);
    expectWithin(circle.radius, 2, 1e-14);
  });

  it('agrees on rings with a search over all pairs and triples', () => {
    fc.assert(
      fc.property(ringPoints, (points) => {
        expectWithin(maximumInscribed(points)!.radius, bruteInscribedRadius(points, insideHull(points)), 1e-11);
      }),
      settings,
    );
  });

  it('is empty, centred in the hull, and on a lattice never smaller than the search finds', () => {
    fc.assert(
      fc.property(latticeSets, (points) => {
        const { x, y, radius } = maximumInscribed(points)!;
        expect(meetEdges(hullEdges(convexHull(points)), x, y, 0).depth).toBeGreaterThan(-1e-9);
        for (const [px, py] of pairsOf(points)) expect(Math.hypot(px - x, py - y)).toBeGreaterThan(radius - 1e-12);
        expect(radius).toBeGreaterThanOrEqual(bruteInscribedRadius(points, insideHull(points)) - 1e-11);
      }),
      settings,
    );
  });

  it('follows turns, scales and shifts, and does not mind order or duplicates', () => {
    fc.assert(
      fc.property(fc.oneof(latticeSets, ringPoints), anyMove, (points, move) => {
        const moved = maximumInscribed(retellPoints(movePoints(points, move)))!;
        expectWithin(moved.radius, move.scale * maximumInscribed(points)!.radius, 1e-9 * (move.scale + 1));
      }),
      settings,
    );
  });

  it('is null for fewer than three corners', () => {
    expect(maximumInscribed([0, 0, 4, 4])).toBeNull();
  });
});

function bandWidth(points: readonly number[], x: number, y: number): number {
  const flat = Float64Array.from(points);
  return bandAt({ outer: flat, inner: flat }, x, y).width;
}

describe('long sets with every point on the hull', () => {
  const ellipse = (count: number): number[] =>
    Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / count).flatMap((t) => [Math.cos(t), 0.9 * Math.sin(t)]);

  it('have the answers of an ellipse: a zone of a − b, and a circle of radius b but for the gap between points', () => {
    const points = ellipse(20_000);
    expectWithin(widthOf(points), 0.1, 1e-12);
    const { x, y, radius } = maximumInscribed(points)!;
    expectWithin(y, 0, 1e-9);
    // Points lie π/10,000 apart: no circle gains more by standing between them.
    expect(radius).toBeGreaterThanOrEqual(0.9);
    expect(radius - 0.9).toBeLessThan((Math.PI / 10_000) ** 2);
    const nearest = Math.min(...pairsOf(points).map(([px, py]) => Math.hypot(px - x, py - y)));
    expectWithin(nearest, radius, 1e-12);
  });

  it('come out the same with some points told twice, so that not all are corners', () => {
    const points = ellipse(4000);
    expectWithin(widthOf([...points, ...points.slice(0, 10)]), widthOf(points), 1e-13);
    expectWithin(maximumInscribed([...points, ...points])!.radius, maximumInscribed(points)!.radius, 1e-13);
  });
});
