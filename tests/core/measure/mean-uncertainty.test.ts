import { describe, expect, it } from 'vitest';
import { axisDrift } from '../../../core/measure/axis-drift.ts';
import { meanUncertainty95 } from '../../../core/measure/mean-uncertainty.ts';

// JCGM 100, table 1 (4.4.3): 20 readings, mean 100.145, s 1.489, u of the mean 0.333 (values from memory, recomputed).
const readings = [
  96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95, 101.11, 101.2,
  101.57, 101.84, 102.36, 102.72,
];

describe('meanUncertainty95', () => {
  it('without a step is Student t times the scatter of the mean', () => {
    // t(0.975, 19) = 2.0930
    expect(meanUncertainty95(readings, 0, null)).toBeCloseTo(2.093 * 0.33292, 3);
  });

  it('for releases that all agree is the step alone, known with infinite degrees', () => {
    expect(meanUncertainty95([128, 128, 128, 128], 1, null)).toBeCloseTo(1.959964 / Math.sqrt(12), 6);
    expect(meanUncertainty95([128, 128, 128, 128], 16, null)).toBeCloseTo((16 * 1.959964) / Math.sqrt(12), 5);
  });

  it('combines scatter and step with the effective degrees of freedom', () => {
    // s/√n = 1 with one degree, q²/12 = 1/12 with infinite ones: ν = (1 + 1/12)² = 1.1736, between t of 1 and of 2.
    const u95 = meanUncertainty95([2, 4], 1, null);
    const combined = Math.sqrt(1 + 1 / 12);
    expect(u95).toBeLessThan(12.7062 * combined);
    expect(u95).toBeGreaterThan(4.3027 * combined);
    // With many degrees the effective ones no longer matter: 200 releases of s = 1, q = 1.
    const many = Array.from({ length: 200 }, (_, index) => (index % 2 === 0 ? 1 : -1));
    expect(meanUncertainty95(many, 1, null)).toBeCloseTo(1.96 * Math.sqrt(1 / 199 + 1 / 12), 3);
  });

  it('counts a drift only where it is significant', () => {
    const seconds = [0, 1, 2, 3, 4, 5, 6, 7];
    const drifting = [0, 1.1, 1.9, 3.05, 3.95, 5.1, 5.9, 7];
    const drift = axisDrift(seconds, drifting);
    expect(drift?.significant).toBe(true);
    // The way of 7 counts over the capture: half-width 3.5, rectangular: 7/√12.
    expect(meanUncertainty95(drifting, 0, drift)).toBeCloseTo((1.96 * 7) / Math.sqrt(12), 1);
    const still = [1, -1, 1, -1, 1, -1, 1, -1];
    const none = axisDrift(seconds, still);
    expect(none?.significant).toBe(false);
    expect(meanUncertainty95(still, 1, none)).toBe(meanUncertainty95(still, 1, null));
  });

  it('is null for one release', () => {
    expect(meanUncertainty95([128], 1, null)).toBeNull();
  });
});

describe('axisDrift', () => {
  it('gives the slope in counts per second with its expanded uncertainty', () => {
    const drift = axisDrift([0, 10, 20, 30], [5, 6, 8, 9]);
    expect(drift?.slope).toBeCloseTo(0.14, 12);
    // Residuals 0.1, −0.3, 0.3, −0.1: s = √0.1, Σ(t − t̄)² = 500, t(0.975, 2) = 4.30265.
    expect(drift?.u95).toBeCloseTo(4.30265 * Math.sqrt(0.1 / 500), 5);
    expect(drift?.significant).toBe(true);
    expect(drift?.seconds).toBe(30);
  });

  it('is null with fewer than three releases or without time between them', () => {
    expect(axisDrift([0, 1], [1, 2])).toBeNull();
    expect(axisDrift([1, 1, 1], [1, 2, 3])).toBeNull();
  });
});
