import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { deflect } from '../../../core/mapping/deflect.ts';
import { largestInEllipse } from '../../../core/measure/largest-in-ellipse.ts';
import { reportedFields, sensorFields } from '../../support/fields.ts';

const even = { min: 1000, centre: 2000, max: 3000 };

describe('largestInEllipse', () => {
  it('on an even mapping about its middle is the long half axis over the span', () => {
    const mapping = { x: even, y: even };
    const largest = largestInEllipse(mapping, sensorFields, { x: 2000, y: 2000 }, { xx: 25, xy: 0, yy: 9 }, 4);
    expect(largest).toBeCloseTo(20 / 1000, 12);
    // Eigenvalues of [[25, 12], [12, 25]] are 37 and 13.
    const turned = largestInEllipse(mapping, sensorFields, { x: 2000, y: 2000 }, { xx: 25, xy: 12, yy: 25 }, 4);
    expect(turned).toBeCloseTo((4 * Math.sqrt(37)) / 1000, 12);
  });

  it('for a circle off the middle adds its radius to the offset', () => {
    const mapping = { x: even, y: even };
    const largest = largestInEllipse(mapping, sensorFields, { x: 2030, y: 2040 }, { xx: 1, xy: 0, yy: 1 }, 10);
    expect(largest).toBeCloseTo(60 / 1000, 12);
  });

  it('of one point is the deflection of that point', () => {
    const mapping = { x: even, y: even };
    const largest = largestInEllipse(mapping, sensorFields, { x: 2030, y: 1960 }, { xx: 0, xy: 0, yy: 0 }, 4);
    expect(largest).toBeCloseTo(0.05, 12);
  });

  it('is never beaten by a dense walk over the region, nor far above it', () => {
    const span = fc.integer({ min: 20, max: 2000 });
    const axis = fc.tuple(span, span).map(([below, above]) => ({ min: 2000 - below, centre: 2000, max: 2000 + above }));
    const shape = fc.tuple(
      fc.double({ min: 0.1, max: 20, noNaN: true }),
      fc.double({ min: 0.1, max: 20, noNaN: true }),
      fc.double({ min: -0.99, max: 0.99, noNaN: true }),
    );
    const middle = fc.record({
      x: fc.double({ min: 1950, max: 2050, noNaN: true }),
      y: fc.double({ min: 1950, max: 2050, noNaN: true }),
    });
    fc.assert(
      fc.property(axis, axis, shape, middle, (x, y, [sx, sy, r], at) => {
        const mapping = { x, y };
        const covariance = { xx: sx * sx, xy: r * sx * sy, yy: sy * sy };
        const largest = largestInEllipse(mapping, reportedFields, at, covariance, 4.2);
        let walked = 0;
        for (let step = 0; step < 2880; step += 1) {
          const turn = (2 * Math.PI * step) / 2880;
          const u = {
            x: at.x + 4.2 * sx * Math.cos(turn),
            y: at.y + 4.2 * sy * (r * Math.cos(turn) + Math.sqrt(1 - r * r) * Math.sin(turn)),
          };
          const d = deflect(mapping, reportedFields, u);
          walked = Math.max(walked, Math.hypot(d.x, d.y));
        }
        expect(largest).toBeGreaterThanOrEqual(walked - 1e-9);
        expect(largest).toBeLessThanOrEqual(walked * (1 + 1e-4));
      }),
      { seed: 61, numRuns: 60 },
    );
  });
});
