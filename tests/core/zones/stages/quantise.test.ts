import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runStages } from '../../../support/run-stages.ts';

describe('quantising', () => {
  it('signed rounds to whole parts of 2ⁿ⁻¹ − 1, the same on both sides, and has a zero', () => {
    const stage = { quantise: { bits: 8, levels: 'signed' } } as const;
    expect(runStages([stage], 0.5 / 127 - 1e-9, -0.5 / 127 + 1e-9)).toEqual({ x: 0, y: 0 });
    expect(runStages([stage], 0.5 / 127 + 1e-9, -0.5 / 127 - 1e-9)).toEqual({ x: 1 / 127, y: -1 / 127 });
    expect(runStages([stage], 1, -1)).toEqual({ x: 1, y: -1 });
    expect(runStages([stage], 1.2, -5)).toEqual({ x: 1, y: -1 });
  });

  it('even has no zero: rest itself comes out as the level above it', () => {
    const stage = { quantise: { bits: 8, levels: 'even' } } as const;
    // W3C Gamepad: of 0 … 255 the counts 127 and 128 are −0.00392157 and +0.00392157.
    expect(runStages([stage], 0, 0).x).toBeCloseTo(0.0039215686274509665, 15);
    expect(runStages([stage], -1e-9, 1)).toEqual({ x: -1 / 255, y: 1 });
  });

  it('never moves a part by more than half a step and gives the same again when repeated', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 16 }),
        fc.constantFrom<'signed' | 'even'>('signed', 'even'),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (bits, levels, x) => {
          const stage = { quantise: { bits, levels } } as const;
          const out = runStages([stage], x, 0).x;
          const half = levels === 'signed' ? 0.5 / (2 ** (bits - 1) - 1) : 1 / (2 ** bits - 1);
          expect(Math.abs(out - x)).toBeLessThanOrEqual(half + 1e-12);
          expect(runStages([stage], out, 0).x).toBeCloseTo(out, 12);
        },
      ),
      { seed: 51 },
    );
  });
});
