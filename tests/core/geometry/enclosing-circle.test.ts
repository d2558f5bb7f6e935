import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enclosingCircle } from '../../../core/geometry/enclosing-circle.ts';
import { expectWithin } from '../../support/expect-close.ts';
import { bruteEnclosingRadius } from '../../support/brute-circles.ts';
import { anyMove, latticePoints, movePoints, pairsOf, retellPoints, ringPoints } from '../../support/point-sets.ts';

const seed = 20_261_130;

describe('enclosingCircle', () => {
  it('rests on two points or on three', () => {
    expect(enclosingCircle([0, 0, 6, 8])).toEqual({ x: 3, y: 4, radius: 5 });
    // Obtuse: the third point does not matter. Acute: the circle through all three.
    expect(enclosingCircle([0, 0, 10, 0, 5, 1])).toEqual({ x: 5, y: 0, radius: 5 });
    const acute = enclosingCircle([-3, 0, 3, 0, 0, 9])!;
    expectWithin(acute.y, 4, 1e-14);
    expectWithin(acute.radius, 5, 1e-14);
  });

  it('of one point has radius 0, of none is null', () => {
    expect(enclosingCircle([3, 4, 3, 4])).toEqual({ x: 3, y: 4, radius: 0 });
    expect(enclosingCircle([])).toBeNull();
  });

  it('agrees with a search over all pairs and triples, and leaves no point outside', () => {
    fc.assert(
      fc.property(fc.oneof(latticePoints, ringPoints), (points) => {
        const circle = enclosingCircle(points)!;
        expectWithin(circle.radius, bruteEnclosingRadius(retellPoints(points)), 1e-12 * (1 + circle.radius));
        for (const [x, y] of pairsOf(points)) {
          expect(Math.hypot(x - circle.x, y - circle.y)).toBeLessThanOrEqual(circle.radius);
        }
      }),
      { seed },
    );
  });

  it('follows turns, scales and shifts, and does not mind order or duplicates', () => {
    fc.assert(
      fc.property(fc.oneof(latticePoints, ringPoints), anyMove, (points, move) => {
        const circle = enclosingCircle(points)!;
        const moved = enclosingCircle(retellPoints(movePoints(points, move)))!;
        const [x, y] = movePoints([circle.x, circle.y], move);
        const tolerance = 1e-9 * (move.scale + 1);
        expectWithin(moved.radius, move.scale * circle.radius, tolerance);
        expectWithin(moved.x, x!, 1e-6 * (move.scale + 1));
        expectWithin(moved.y, y!, 1e-6 * (move.scale + 1));
      }),
      { seed },
    );
  });
});
