import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadLabels } from '../../../core/plot/spread-labels.ts';

describe('spreadLabels', () => {
  it('leaves labels that have room where they are', () => {
    expect(
      spreadLabels(
        [
          { at: 20, size: 10 },
          { at: 50, size: 10 },
        ],
        0,
        100,
      ),
    ).toEqual([20, 50]);
  });

  it('moves overlapping labels apart and keeps them between the ends', () => {
    expect(
      spreadLabels(
        [
          { at: 98, size: 10 },
          { at: 97, size: 10 },
        ],
        0,
        100,
        2,
      ),
    ).toEqual([95, 83]);
  });

  it('never lets labels overlap where they fit, and keeps their order', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 10 }), (wanted) => {
        const places = spreadLabels(
          wanted.map((at) => ({ at, size: 20 })),
          0,
          300,
          2,
        );
        const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0));
        for (let k = 1; k < order.length; k += 1)
          expect((places[order[k]!] ?? 0) - (places[order[k - 1]!] ?? 0)).toBeGreaterThanOrEqual(22 - 1e-9);
        expect(Math.min(...places)).toBeGreaterThanOrEqual(10 - 1e-9);
        expect(Math.max(...places)).toBeLessThanOrEqual(290 + 1e-9);
      }),
      { seed: 16 },
    );
  });
});
