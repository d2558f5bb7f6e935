import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearScale } from '../../../core/plot/linear-scale.ts';

describe('linearScale', () => {
  it('maps the ends of the domain to the ends of the range', () => {
    const scale = linearScale([0, 360], [50, 770]);
    expect([scale.at(0), scale.at(90), scale.at(360)]).toEqual([50, 230, 770]);
  });

  it('draws a domain that runs backwards, as counts that shrink upwards need', () => {
    const scale = linearScale([4095, 0], [200, 0]);
    expect(scale.at(4095)).toBe(200);
    expect(scale.at(0)).toBe(0);
  });

  it('puts everything into the middle when the domain has no width', () => {
    expect(linearScale([7, 7], [0, 100]).at(7)).toBe(50);
    expect(linearScale([2, 4], [10, 10]).invert(10)).toBe(3);
  });

  it('does not clamp a value outside of its domain', () => {
    expect(linearScale([0, 1], [0, 10]).at(1.5)).toBe(15);
  });

  it('comes back to the value it was given', () => {
    const number = fc.double({ min: -1e4, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(number, number, number, (a, width, value) => {
        fc.pre(Math.abs(width) > 1e-3);
        const scale = linearScale([a, a + width], [13, 613]);
        expect(scale.invert(scale.at(value))).toBeCloseTo(value, 6);
      }),
      { seed: 11 },
    );
  });
});
