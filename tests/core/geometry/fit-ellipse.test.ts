import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitEllipse } from '../../../core/geometry/fit-ellipse.ts';
import { expectWithin } from '../../support/expect-close.ts';
import { anyMove, movePoints, pairsOf, ringPoints } from '../../support/point-sets.ts';

const seed = 20_261_132;

describe('fitEllipse', () => {
  it('finds a tilted ellipse from five points on it', () => {
    const points = [0, 1, 2.2, 3.1, 5].flatMap((t) => [3 * Math.cos(t), 2 * Math.sin(t)]);
    const found = fitEllipse(movePoints(points, { angle: 30, scale: 100, x: 2048, y: 1900 }))!;
    expectWithin(found.x, 2048, 1e-7);
    expectWithin(found.y, 1900, 1e-7);
    expectWithin(found.a, 300, 1e-7);
    expectWithin(found.b, 200, 1e-7);
    expectWithin(found.angle, 30, 1e-7);
  });

  it('is null for fewer than five distinct points, a line, two lines and a parabola', () => {
    expect(fitEllipse([1, 0, 0, 1, -1, 0, 0, -1, 1, 0])).toBeNull();
    expect(fitEllipse([0, 0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5])).toBeNull();
    expect(fitEllipse([0, 0, 1, 0, 2, 0, 0, 1, 1, 1, 2, 1])).toBeNull();
    expect(fitEllipse([0, 0, 1, 1, 2, 4, 3, 9, 4, 16, -1, 1])).toBeNull();
    expect(fitEllipse([])).toBeNull();
  });

  it('does not mind order, nor every point told twice', () => {
    fc.assert(
      fc.property(ringPoints, (points) => {
        const found = fitEllipse(points)!;
        const retold = pairsOf(points).toReversed().flat();
        for (const again of [fitEllipse(retold)!, fitEllipse([...points, ...retold])!]) {
          expectWithin(again.x, found.x, 1e-8);
          expectWithin(again.y, found.y, 1e-8);
          expectWithin(again.a, found.a, 1e-8);
          expectWithin(again.b, found.b, 1e-8);
        }
      }),
      { seed },
    );
  });

  it('follows turns, scales and shifts', () => {
    fc.assert(
      fc.property(ringPoints, anyMove, (points, move) => {
        const found = fitEllipse(points)!;
        const moved = fitEllipse(movePoints(points, move))!;
        const [x, y] = movePoints([found.x, found.y], move);
        const tolerance = 1e-7 * (move.scale + 1);
        expect(found.a).toBeGreaterThanOrEqual(found.b);
        expectWithin(moved.a, move.scale * found.a, tolerance);
        expectWithin(moved.b, move.scale * found.b, tolerance);
        expectWithin(moved.x, x!, tolerance);
        expectWithin(moved.y, y!, tolerance);
        // The nearer to a circle, the less an angle can be told.
        const apart = Math.abs(moved.angle - found.angle - move.angle) % 180;
        expect(Math.min(apart, 180 - apart) * (found.a - found.b)).toBeLessThan(1e-5 * (1 + 1 / move.scale));
      }),
      { seed },
    );
  });
});
