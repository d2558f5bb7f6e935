import { describe, expect, it } from 'vitest';
import { RunningNoise } from '../../../../core/capture/evidence/running-noise.ts';
import { createRandom } from '../../../../core/numeric/random.ts';
import { expectRelative } from '../../../support/expect-close.ts';

/** Counts that curve as b·i²: every second difference is 2b. */
function curved(b: number, readings: number, stepUs = 1000): RunningNoise {
  const noise = new RunningNoise();
  for (let i = 0; i < readings; i += 1) noise.reading(stepUs * i, b * i * i);
  return noise;
}

describe('the noise of an axis as it comes', () => {
  it('is 1.4826/√6 of the usual second difference, less by the root of the readings in the time', () => {
    const sigma = (1.4826 * 2 * 3) / Math.sqrt(6);
    expect(curved(3, 100).ofMean(1000)).toBeCloseTo(sigma, 9);
    expect(curved(3, 100).ofMean(100_000)).toBeCloseTo(sigma / 10, 9);
    expect(curved(3, 100, 15_625).ofMean(100_000)).toBeCloseTo(sigma * Math.sqrt(0.15625), 9);
    // No mean is less sure than one reading.
    expect(curved(3, 100, 200_000).ofMean(100_000)).toBeCloseTo(sigma, 9);
  });

  it('is 0 before 31 second differences, and of a stick that moves steadily', () => {
    expect(curved(3, 32).ofMean(1000)).toBe(0);
    expect(curved(3, 33).ofMean(1000)).toBeGreaterThan(0);
    const steady = new RunningNoise();
    for (let i = 0; i < 100; i += 1) steady.reading(1000 * i, 7 * i);
    expect(steady.ofMean(1000)).toBe(0);
  });

  it('forgets what is older than the latest readings, and does not mind a single leap', () => {
    const noise = new RunningNoise();
    for (let i = 0; i < 200; i += 1) noise.reading(1000 * i, i < 100 ? (i % 2) * 50 : 8);
    expect(noise.ofMean(1000)).toBe(0);
    noise.reading(200_000, 900);
    noise.reading(201_000, 8);
    expect(noise.ofMean(1000)).toBe(0);
  });

  it('is σ of white noise in the mean', () => {
    const random = createRandom(4);
    const noise = new RunningNoise();
    let sum = 0;
    for (let i = 0; i < 20_000; i += 1) {
      noise.reading(1000 * i, 2048 + 5 * random.normal());
      if (i >= 100) sum += noise.ofMean(1000);
    }
    expectRelative(sum / 19_900, 5, 0.05);
  });
});
