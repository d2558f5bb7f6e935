import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitCircle } from '../../../core/geometry/fit-circle.ts';
import { expectWithin } from '../../support/expect-close.ts';
import { anyMove, movePoints, pairsOf, retellPoints, ringPoints } from '../../support/point-sets.ts';

const seed = 20_261_131;

function sumOfSquares(points: readonly number[], x: number, y: number): number {
  const distances = pairsOf(points).map(([px, py]) => Math.hypot(px - x, py - y));
  const mean = distances.reduce((sum, r) => sum + r, 0) / distances.length;
  return distances.reduce((sum, r) => sum + (r - mean) ** 2, 0);
}

describe('fitCircle', () => {
  it('finds an exact circle, from three points and from a short arc', () => {
    const arc = [0, 5, 10, 20].flatMap((degrees) => {
      const angle = (degrees * Math.PI) / 180;
      return [2048 + 1500 * Math.cos(angle), 2000 + 1500 * Math.sin(angle)];
    });
    expectWithin(fitCircle([0, 0, 6, 8, 6, 0])?.y, 4, 1e-14);
    expectWithin(fitCircle([0, 0, 6, 8, 6, 0])?.radius, 5, 1e-14);
    const found = fitCircle(arc)!;
    expectWithin(found.x, 2048, 1e-7);
    expectWithin(found.y, 2000, 1e-7);
    expectWithin(found.radius, 1500, 1e-7);
  });

  it('is null for points on a line, for two and for none', () => {
    expect(fitCircle([0, 0, 1, 1, 2, 2, 5, 5])).toBeNull();
    expect(fitCircle([0, 0, 1, 1, 0, 0])).toBeNull();
    expect(fitCircle([4, 4, 4, 4])).toBeNull();
    expect(fitCircle([])).toBeNull();
  });

  it('has the least sum of squares near and far', () => {
    fc.assert(
      fc.property(
        ringPoints,
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (points, dx, dy) => {
          const { x, y } = fitCircle(points)!;
          const least = sumOfSquares(points, x, y);
          for (const reach of [1e-6, 1e-3, 0.3]) {
            expect(sumOfSquares(points, x + reach * dx, y + reach * dy)).toBeGreaterThanOrEqual(
              least * (1 - 1e-13) - 1e-28,
            );
          }
        },
      ),
      { seed },
    );
  });

  it('follows turns, scales and shifts, and does not mind order', () => {
    fc.assert(
      fc.property(ringPoints, anyMove, (points, move) => {
        const circle = fitCircle(points)!;
        const moved = fitCircle(pairsOf(movePoints(points, move)).toReversed().flat())!;
        const [x, y] = movePoints([circle.x, circle.y], move);
        expectWithin(moved.radius, move.scale * circle.radius, 1e-8 * (move.scale + 1));
        expectWithin(moved.x, x!, 1e-8 * (move.scale + 1));
        expectWithin(moved.y, y!, 1e-8 * (move.scale + 1));
      }),
      { seed },
    );
  });

  it('counts a point that is told twice twice', () => {
    const points = [1, 0, 0, 1.2, -1, 0, 0, -1];
    const once = fitCircle(points)!;
    expect(fitCircle([...points, ...points])!.radius).toBeCloseTo(once.radius, 12);
    expect(fitCircle(retellPoints(points))!.radius).not.toBeCloseTo(once.radius, 4);
  });
});
