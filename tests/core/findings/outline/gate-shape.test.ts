import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gateShape, type Sides } from '../../../../core/findings/outline/gate-shape.ts';

const turns = (sides: number): number => (2 * Math.PI) / sides;
const sided = fc.constantFrom<Sides>(4, 6, 8);
const rounding = fc.double({ min: 0, max: 0.97, noNaN: true });
const angle = fc.double({ min: -10, max: 10, noNaN: true });

describe('the shape of a gate', () => {
  it('is that of a regular polygon without rounding: corners at 1, sides at cos(π/n)', () => {
    for (const sides of [4, 6, 8] as const) {
      expect(gateShape(sides, 0, 0)).toBeCloseTo(1, 12);
      expect(gateShape(sides, 0, Math.PI / sides)).toBeCloseTo(Math.cos(Math.PI / sides), 12);
    }
    // A square with corners on the axes: x + y = 1.
    const radius = gateShape(4, 0, 0.3);
    expect(radius * (Math.cos(0.3) + Math.sin(0.3))).toBeCloseTo(1, 12);
  });

  it('rounds corners by a circle: the side of a square with ρ = 0.4 stands at 0.6/√2 + 0.4', () => {
    const side = 0.6 * Math.SQRT1_2 + 0.4;
    expect(gateShape(4, 0.4, Math.PI / 4)).toBeCloseTo(side, 12);
    expect(gateShape(4, 0.4, Math.PI / 4 + 0.1)).toBeCloseTo(side / Math.cos(0.1), 12);
    // Near the corner its circle stands about (0.6, 0).
    const radius = gateShape(4, 0.4, 0.1);
    expect(Math.hypot(radius * Math.cos(0.1) - 0.6, radius * Math.sin(0.1))).toBeCloseTo(0.4, 12);
    expect(gateShape(4, 0.4, 0)).toBeCloseTo(1, 12);
  });

  it('is 1 all round without sides, and stays a gate with a rounding that is none', () => {
    expect(gateShape(0, 0.2, 1.234)).toBe(1);
    expect(gateShape(8, -1, 0.2)).toBe(gateShape(8, 0, 0.2));
    expect(gateShape(8, 3, 0.2)).toBe(gateShape(8, 0.98, 0.2));
  });

  it('repeats from corner to corner, is the same to either side, and lies between the side and the corner', () => {
    fc.assert(
      fc.property(sided, rounding, angle, (sides, rho, at) => {
        const radius = gateShape(sides, rho, at);
        expect(gateShape(sides, rho, at + turns(sides))).toBeCloseTo(radius, 9);
        expect(gateShape(sides, rho, -at)).toBeCloseTo(radius, 9);
        expect(radius).toBeLessThanOrEqual(1 + 1e-12);
        expect(radius).toBeGreaterThanOrEqual((1 - rho) * Math.cos(Math.PI / sides) + rho - 1e-12);
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('has no step where a side meets its rounded corner', () => {
    fc.assert(
      fc.property(sided, rounding, angle, (sides, rho, at) => {
        expect(Math.abs(gateShape(sides, rho, at + 1e-6) - gateShape(sides, rho, at))).toBeLessThan(1.1e-6);
      }),
      { seed: 6, numRuns: 500 },
    );
  });
});
