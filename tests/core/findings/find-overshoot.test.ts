import { describe, expect, it } from 'vitest';
import { findOvershoot } from '../../../core/findings/find-overshoot.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { HALF, makeSubject, type SubjectWish } from './make-subject.ts';

function find(largest: number, mean: number, wish: SubjectWish = {}) {
  const flick = {
    count: 4,
    unread: 0,
    overshoot: { largest, mean },
    overshootCounts: { largest: HALF * largest, mean: HALF * mean },
    settlingUs: { p50: 40_000, max: 61_400 },
    band: { x: 5, y: 5 },
    at: [1_000_000, 3_000_000],
  };
  return findOvershoot(makeSubject({ ...wish, report: { flick, ...wish.report } }), defaultLimits);
}

describe('findOvershoot', () => {
  it('takes the largest of the flicks; U is how far that is from their mean, and twice the noise at rest', () => {
    const found = find(0.08, 0.05, { noise: 25 })!;
    // 2 · 25 counts of 1250 are 0.04: √(0.03² + 0.04²) = 0.05.
    expect(found).toMatchObject({ value: 0.08, limit: 0.05, decision: 'cannot say' });
    expect(found.u95).toBeCloseTo(0.05, 9);
    expect(find(0.08, 0.05, { report: { rest: null } })?.u95).toBeCloseTo(0.03, 12);
  });

  it('decides by the 5 % of a usual zone', () => {
    const still = { report: { rest: null } };
    // U is 0.004.
    expect([0.055, 0.053, 0.047, 0.045].map((largest) => find(largest, largest - 0.004, still)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    expect(find(0.055, 0.051, still)?.severity).toBe('fault');
  });

  it('says how long it takes and shows a fifth of a second after each flick', () => {
    const found = find(0.15, 0.14)!;
    expect(found.says).toContain('swings 15.0 % past its rest (mean of 4: 14.0 %)');
    expect(found.for).toEqual(['It takes up to 61 ms until it stays at its rest.']);
    expect(found.shows.spans).toEqual([
      { startUs: 1_000_000, endUs: 1_200_000 },
      { startUs: 3_000_000, endUs: 3_200_000 },
    ]);
  });
});
