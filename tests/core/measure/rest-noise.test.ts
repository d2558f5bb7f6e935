import { describe, expect, it } from 'vitest';
import { noiseBelowStep, peakToPeak, pooledNoise } from '../../../core/measure/rest-noise.ts';
import { makeDwell } from '../../support/make-evidence.ts';

const point = { x: 100, y: 100 };

describe('pooledNoise', () => {
  it('weighs the variance of each dwell by its degrees of freedom', () => {
    const dwells = [
      makeDwell({ point, reports: 21, variance: { x: 1, y: 4 } }),
      makeDwell({ point, reports: 61, variance: { x: 9, y: 4 } }),
      makeDwell({ point, reports: 5, variance: null }),
    ];
    expect(pooledNoise(dwells)).toEqual({ x: Math.sqrt((20 * 1 + 60 * 9) / 80), y: 2 });
  });

  it('of a count that never changed is null and below the step, not zero', () => {
    const noise = pooledNoise([
      makeDwell({ point, variance: { x: 0, y: 0.01 } }),
      makeDwell({ point, variance: { x: 0, y: 0.01 } }),
    ]);
    expect(noise).toEqual({ x: null, y: 0.1 });
    expect(noiseBelowStep(noise, { x: 2, y: 2 }, { x: 1, y: 1 })).toEqual({ x: true, y: true });
    expect(noiseBelowStep({ x: 0.3, y: 2 }, { x: 2, y: 16 }, { x: 1, y: 8 })).toEqual({ x: false, y: true });
    // Between two neighbouring counts σ is up to half a step, whatever the noise.
    expect(noiseBelowStep({ x: 0.48, y: 0.48 }, { x: 1, y: 2 }, { x: 1, y: 1 })).toEqual({ x: true, y: false });
    expect(noiseBelowStep(null, { x: 1, y: 1 }, { x: 1, y: 1 })).toBeNull();
  });

  it('is null where no dwell has enough reports', () => {
    expect(pooledNoise([makeDwell({ point, reports: 3 })])).toBeNull();
  });
});

it('peakToPeak is the largest difference within one dwell, not between dwells', () => {
  const dwells = [
    makeDwell({ point, readings: [100, 50, 103, 51] }),
    makeDwell({ point: { x: 500, y: 500 }, readings: [500, 500, 501, 507] }),
  ];
  expect(peakToPeak(dwells)).toEqual({ x: 3, y: 7 });
});
