import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runStages } from '../../../support/run-stages.ts';

describe('minimum output', () => {
  it('leaves zero at zero and lifts everything else', () => {
    expect(runStages([{ minimumOutput: 0.2 }], 0, 0)).toEqual({ x: 0, y: 0 });
    expect(runStages([{ minimumOutput: 0.2 }], 0.3, 0.4).y).toBeCloseTo(0.6 * 0.8, 12);
    expect(runStages([{ minimumOutput: 0.2 }], 0, -1).y).toBeCloseTo(-1, 12);
  });

  it('undoes a scaled zone of the same size that follows', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.9, noNaN: true }), fc.double({ min: 0.001, max: 1 }), (least, m) => {
        const out = runStages([{ minimumOutput: least }, { zone: 'scaledRadial', inner: least, outer: 1 }], m, 0);
        expect(out.x).toBeCloseTo(m, 9);
      }),
      { seed: 31 },
    );
  });
});

describe('a curve', () => {
  it('bends the magnitude by the exponent and keeps the direction', () => {
    const out = runStages([{ curve: { exponent: 2 } }], 0.3, 0.4);
    expect(out.x).toBeCloseTo(0.15, 12);
    expect(out.y).toBeCloseTo(0.2, 12);
    expect(runStages([{ curve: { exponent: 0.5 } }], 0, 0)).toEqual({ x: 0, y: 0 });
  });

  it('goes straight from point to point and holds its ends', () => {
    const points = [
      [0.1, 0],
      [0.5, 0.3],
      [1, 0.9],
    ] as const;
    const at = (m: number) => runStages([{ curve: { points } }], -m, 0).x;
    expect(at(0.05)).toBeCloseTo(0, 12);
    expect(at(0.3)).toBeCloseTo(-0.15, 12);
    expect(at(0.5)).toBeCloseTo(-0.3, 12);
    expect(at(0.75)).toBeCloseTo(-0.6, 12);
    expect(at(1.3)).toBeCloseTo(-0.9, 12);
  });
});

describe('a limit', () => {
  it('by axis keeps the square, radial keeps the disc', () => {
    expect(runStages([{ limit: 'axis' }], 1.4, -0.2)).toEqual({ x: 1, y: -0.2 });
    const out = runStages([{ limit: 'radial' }], 1.2, -1.6);
    expect(out.x).toBeCloseTo(0.6, 12);
    expect(out.y).toBeCloseTo(-0.8, 12);
    expect(runStages([{ limit: 'radial' }], 0.3, 0.4)).toEqual({ x: 0.3, y: 0.4 });
  });
});
