import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitEllipse } from '../../../core/geometry/fit-ellipse.ts';
import { skewOf } from '../../../core/measure/skew.ts';

function gateSeenBy(xGain: number, yGain: number, skewDegrees: number): number[] {
  const skew = (skewDegrees * Math.PI) / 180;
  return Array.from({ length: 72 }, (_, index) => {
    const turn = (2 * Math.PI * index) / 72;
    return [xGain * Math.cos(turn), yGain * Math.sin(turn + skew)];
  }).flat();
}

describe('skewOf', () => {
  it('is the angle that two axes of any gains lack to be perpendicular', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 500, max: 2000, noNaN: true }),
        fc.double({ min: 500, max: 2000, noNaN: true }),
        fc.double({ min: -20, max: 20, noNaN: true }),
        (xGain, yGain, skew) => {
          const ellipse = fitEllipse(gateSeenBy(xGain, yGain, skew));
          expect(skewOf(ellipse)).toBeCloseTo(skew, 5);
        },
      ),
      { seed: 71, numRuns: 50 },
    );
  });

  it('is 0 for a circle and for unequal gains, and null without an ellipse', () => {
    expect(skewOf({ x: 0, y: 0, a: 1000, b: 1000, angle: 33 })).toBeCloseTo(0, 12);
    expect(skewOf({ x: 0, y: 0, a: 1200, b: 900, angle: 90 })).toBeCloseTo(0, 12);
    expect(skewOf(null)).toBeNull();
  });
});
