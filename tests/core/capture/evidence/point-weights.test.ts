import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pointWeights } from '../../../../core/capture/evidence/point-weights.ts';

const lines = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: 0, max: 50 })), { minLength: 1, maxLength: 60 })
  .map((points) => points.flat());

describe('pointWeights', () => {
  it('keeps the ends, and no point lies farther from the line than the tolerance', () => {
    fc.assert(
      fc.property(lines, fc.double({ min: 0, max: 8, noNaN: true }), (points, tolerance) => {
        const kept = keptOf(pointWeights(points, 0), tolerance);
        expect(kept[0]).toBe(0);
        expect(kept.at(-1)).toBe(points.length / 2 - 1);
        kept.slice(1).forEach((to, i) => {
          for (let at = (kept[i] ?? 0) + 1; at < to; at += 1)
            expect(distance(points, at, kept[i] ?? 0, to)).toBeLessThanOrEqual(tolerance + 1e-9);
        });
      }),
      { seed: 9, numRuns: 200 },
    );
  });

  it('keeps every corner of a square of many points and nothing between them', () => {
    const square = [0, 1, 2, 3].flatMap((side) =>
      Array.from(
        { length: 100 },
        (_, i) =>
          [
            [i, 0],
            [100, i],
            [100 - i, 100],
            [0, 100 - i],
          ][side] as [number, number],
      ).flat(),
    );
    expect(keptOf(pointWeights(square, 0.1), 0.1)).toEqual([0, 100, 200, 300, 399]);
  });

  it('has nothing to keep of nothing', () => {
    expect(pointWeights([], 1)).toHaveLength(0);
  });
});

function distance(points: readonly number[], at: number, first: number, last: number): number {
  const [x = 0, y = 0] = points.slice(2 * at);
  const [ax = 0, ay = 0] = points.slice(2 * first);
  const [bx = 0, by = 0] = points.slice(2 * last);
  const length = (bx - ax) ** 2 + (by - ay) ** 2;
  const along = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / length));
  return Math.hypot(x - ax - along * (bx - ax), y - ay - along * (by - ay));
}

function keptOf(weights: Float64Array, tolerance: number): number[] {
  return [...weights.keys()].filter((i) => (weights[i] ?? 0) > tolerance);
}
