import { describe, expect, it } from 'vitest';
import { axisDrift } from '../../../core/measure/axis-drift.ts';

/** t(0.975) with 3 degrees of freedom, from published tables. */
const T3 = 3.182446;

describe('axisDrift', () => {
  it('is the slope of the least-squares line, with what its scatter says of it', () => {
    // About the line 100 + 2 t the rests stand off by +1, −2, 0, +2, −1: no slope of their own, Σd² = 10, Σ(t − t̄)² = 10.
    const drift = axisDrift([0, 1, 2, 3, 4], [101, 100, 104, 108, 107])!;
    expect(drift.slope).toBeCloseTo(2, 12);
    expect(drift.degrees).toBe(3);
    expect(drift.residualDeviation).toBeCloseTo(Math.sqrt(10 / 3), 12);
    expect(drift.u95).toBeCloseTo(T3 * Math.sqrt(10 / 3 / 10), 5);
    expect(drift.significant).toBe(true);
    expect(drift.seconds).toBe(4);
  });

  it('counts the rounding of each rest where the counts come in steps', () => {
    // Without any scatter step/√12 of each rest is all there is: the error of the slope is q / √(12 Σ(t − t̄)²).
    const seconds = [10, 11, 12, 13, 14];
    const counts = [50, 58, 66, 74, 82];
    expect(axisDrift(seconds, counts)!.u95).toBeCloseTo(0, 12);
    const drift = axisDrift(seconds, counts, 8)!;
    expect(drift.u95).toBeCloseTo((T3 * 8) / Math.sqrt(120), 5);
    expect(drift.slope).toBeCloseTo(8, 12);
    expect(drift.seconds).toBe(4);
    expect(drift.significant).toBe(true);
    // 3.18 · 40 / √120 = 11.6, more than the slope.
    expect(axisDrift(seconds, counts, 40)!.significant).toBe(false);
  });

  it('adds scatter and rounding as squares', () => {
    const drift = axisDrift([0, 1, 2, 3, 4], [101, 100, 104, 108, 107], 6)!;
    expect(drift.u95).toBeCloseTo(T3 * Math.sqrt(10 / 3 / 10 + 36 / 120), 5);
  });

  it('tells a fall from zero as it tells a rise, and no slope from none', () => {
    expect(axisDrift([0, 1, 2, 3, 4], [107, 108, 104, 100, 101])).toMatchObject({ significant: true, seconds: 4 });
    expect(axisDrift([0, 1, 2, 3, 4], [1, -2, 0, 2, -1])).toMatchObject({ significant: false });
    expect(axisDrift([0, 1, 2], [7, 7, 7])).toMatchObject({ slope: 0, u95: 0, significant: false });
  });

  it('is null with fewer than three releases', () => {
    expect(axisDrift([0, 1], [5, 9])).toBeNull();
    expect(axisDrift([], [])).toBeNull();
  });
});
