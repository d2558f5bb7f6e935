import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exactUpperBound95 } from '../../../core/numeric/exact-upper-bound.ts';
import { expectWithin } from '../../support/expect-close.ts';

/** P(at most k of n) when each has probability p. */
function atMost(k: number, n: number, p: number): number {
  let term = (1 - p) ** n;
  let sum = term;
  for (let i = 1; i <= k; i += 1) {
    term *= ((n - i + 1) / i) * (p / (1 - p));
    sum += term;
  }
  return sum;
}

describe('exactUpperBound95', () => {
  it('gives 0.117 for no leak in 24 releases, and needs 59 clean ones for less than 5 %', () => {
    expectWithin(exactUpperBound95(0, 24)!, 0.117, 5e-4);
    expect(exactUpperBound95(0, 58)).toBeGreaterThan(0.05);
    expect(exactUpperBound95(0, 59)).toBeLessThan(0.05);
  });

  it('is the share at which so few leaks have a chance of just 5 %', () => {
    for (const n of [1, 2, 12, 24, 59, 200]) {
      for (const k of [0, 1, Math.floor(n / 2)].filter((count) => count < n)) {
        expectWithin(atMost(k, n, exactUpperBound95(k, n)!), 0.05, 1e-10);
      }
      // All but one: the bound has a closed form.
      expectWithin(exactUpperBound95(n - 1, n)!, 0.95 ** (1 / n), 1e-12);
    }
  });

  it('lies above the share seen, rises with each leak and falls with each clean release', () => {
    const trials = fc
      .integer({ min: 2, max: 500 })
      .chain((n) => fc.tuple(fc.integer({ min: 0, max: n - 1 }), fc.constant(n)));
    fc.assert(
      fc.property(trials, ([k, n]) => {
        const bound = exactUpperBound95(k, n)!;
        expect(bound).toBeGreaterThan(k / n);
        expect(bound).toBeLessThan(exactUpperBound95(k + 1, n)!);
        expect(bound).toBeGreaterThan(exactUpperBound95(k, n + 1)!);
      }),
      { seed: 20_261_136 },
    );
  });

  it('is 1 where every release leaked', () => {
    expect(exactUpperBound95(24, 24)).toBe(1);
    expect(exactUpperBound95(1, 1)).toBe(1);
  });

  it('is null for counts that cannot be', () => {
    for (const [k, n] of [
      [0, 0],
      [-1, 5],
      [6, 5],
      [0.5, 5],
      [1, 5.5],
      [NaN, 5],
    ] as const) {
      expect(exactUpperBound95(k, n)).toBeNull();
    }
  });
});
