import { describe, expect, it } from 'vitest';
import { mean } from '../../../core/numeric/mean.ts';
import { normalCdf } from '../../support/normal-cdf.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { variance } from '../../../core/numeric/variance.ts';

function take(count: number, draw: () => number): number[] {
  return Array.from({ length: count }, draw);
}

/** Largest distance between the share of values below x and the distribution at x. */
function largestDeparture(values: readonly number[], distribution: (x: number) => number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return Math.max(...sorted.map((x, i) => Math.abs(distribution(x) - (i + 0.5) / sorted.length)));
}

describe('createRandom', () => {
  it('gives the same stream for the same seed and another for another', () => {
    const one = createRandom(7);
    const again = createRandom(7);
    const other = createRandom(8);
    const stream = take(50, () => one.normal());
    expect(take(50, () => again.normal())).toEqual(stream);
    expect(take(50, () => other.normal())).not.toEqual(stream);
  });

  it('goes on exactly from a state that went through JSON, in the middle of a pair of normal deviates', () => {
    const random = createRandom(3);
    random.normal();
    const saved = JSON.parse(JSON.stringify(random.state())) as ReturnType<typeof random.state>;
    const goesOn = take(20, () => random.normal() + random.next());
    const resumed = createRandom(saved);
    expect(take(20, () => resumed.normal() + resumed.next())).toEqual(goesOn);
  });

  it('starts neighbouring seeds far apart: their first numbers are uniform', () => {
    const firsts = Array.from({ length: 2000 }, (_, seed) => createRandom(seed).next());
    // Kolmogorov's 0.1 % point is 1.95/√n.
    expect(largestDeparture(firsts, (x) => x)).toBeLessThan(1.95 / Math.sqrt(2000));
  });

  it('draws uniform numbers in [0, 1) and normal ones with mean 0 and variance 1', () => {
    const random = createRandom(11);
    const uniform = take(20_000, () => random.next());
    const normal = take(20_000, () => random.normal());
    expect(uniform.every((x) => x >= 0 && x < 1)).toBe(true);
    expect(largestDeparture(uniform, (x) => x)).toBeLessThan(1.95 / Math.sqrt(20_000));
    expect(largestDeparture(normal, normalCdf)).toBeLessThan(1.95 / Math.sqrt(20_000));
    expect(Math.abs(mean(normal))).toBeLessThan(0.03);
    expect(Math.abs(variance(normal) - 1)).toBeLessThan(0.04);
  });

  it('draws whole numbers with both ends included, each about equally often', () => {
    const random = createRandom(5);
    const counts = new Map<number, number>();
    for (const value of take(6000, () => random.integer(-2, 3))) counts.set(value, (counts.get(value) ?? 0) + 1);
    expect([...counts.keys()].toSorted((a, b) => a - b)).toEqual([-2, -1, 0, 1, 2, 3]);
    for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(120);
  });
});
