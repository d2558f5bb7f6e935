import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runStages } from '../../../support/run-stages.ts';

const maps = ['elliptical', 'squircular', 'radial'] as const;
const part = fc.double({ min: -1, max: 1, noNaN: true });

describe.each(maps)('the %s map', (map) => {
  it('keeps the square in the disc and leads back, half the digits lost at the corners', () => {
    fc.assert(
      fc.property(part, part, (x, y) => {
        const disc = runStages([{ shape: 'squareToDisc', map }], x, y);
        expect(Math.hypot(disc.x, disc.y)).toBeLessThanOrEqual(1 + 1e-12);
        const back = runStages([{ shape: 'discToSquare', map }], disc.x, disc.y);
        expect(back.x).toBeCloseTo(x, 6);
        expect(back.y).toBeCloseTo(y, 6);
      }),
      { seed: 41 },
    );
  });

  it('leaves the axes as they are', () => {
    for (const shape of ['squareToDisc', 'discToSquare'] as const) {
      expect(runStages([{ shape, map }], 0.4, 0).x).toBeCloseTo(0.4, 12);
      expect(runStages([{ shape, map }], 0, -1).y).toBeCloseTo(-1, 12);
      expect(runStages([{ shape, map }], 0, 0)).toEqual({ x: 0, y: 0 });
    }
  });

  it('first brings to its border what lies outside', () => {
    const outside = runStages([{ shape: 'discToSquare', map }], 1.2, 1.2);
    expect(outside.x).toBeCloseTo(1, 6);
    expect(outside.y).toBeCloseTo(1, 6);
    const corner = runStages([{ shape: 'squareToDisc', map }], 3, -3);
    expect(corner.x).toBeCloseTo(Math.SQRT1_2, 12);
    expect(corner.y).toBeCloseTo(-Math.SQRT1_2, 12);
  });
});
