import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipPolyline } from '../../../core/plot/clip-polyline.ts';

const box = { x: 0, y: 0, width: 10, height: 10 };

describe('clipPolyline', () => {
  it('leaves a line inside the frame as it is', () => {
    expect(clipPolyline([1, 1, 5, 5, 9, 1], box)).toEqual([1, 1, 5, 5, 9, 1]);
  });

  it('cuts a line where it crosses the edges', () => {
    expect(clipPolyline([-5, 5, 15, 5], box)).toEqual([0, 5, 10, 5]);
    expect(clipPolyline([5, -5, 5, 5], box)).toEqual([5, 0, 5, 5]);
  });

  it('draws nothing for a line that passes by', () => {
    expect(clipPolyline([-5, 2, 2, -5], box)).toEqual([]);
    expect(clipPolyline([-5, 12, 15, 12], box)).toEqual([]);
  });

  it('breaks a line that leaves and comes back', () => {
    expect(clipPolyline([5, 5, 15, 5, 15, 8, 5, 8], box)).toEqual([5, 5, 10, 5, Number.NaN, Number.NaN, 10, 8, 5, 8]);
  });

  it('keeps a break that the line already had', () => {
    const points = [1, 1, 2, 2, Number.NaN, Number.NaN, 3, 3, 4, 4];
    expect(clipPolyline(points, box)).toEqual([1, 1, 2, 2, Number.NaN, Number.NaN, 3, 3, 4, 4]);
  });

  it('never draws outside of the frame', () => {
    const coordinate = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(
      fc.property(fc.array(coordinate, { minLength: 4, maxLength: 40 }), (points) => {
        for (const value of clipPolyline(points, box))
          if (!Number.isNaN(value)) expect(Math.abs(value - 5)).toBeLessThanOrEqual(5 + 1e-9);
      }),
      { seed: 13 },
    );
  });
});
