import { describe, expect, it } from 'vitest';
import { isMissed, sayAsked, sayCount } from './demand.ts';
import { exactInterval95 } from './exact-share.ts';

const found = { what: 'found', atLeast: 0.98 };
const wrong = { what: 'called faulty', atMost: 0.02 };
const never = { what: 'replaced', atMost: 0 };

describe('the exact interval of a share', () => {
  it('is what the printed tables have', () => {
    const { low, high } = exactInterval95({ found: 10, of: 100 });
    expect(low).toBeCloseTo(0.049, 4);
    expect(high).toBeCloseTo(0.1762, 4);
  });

  it('ends at 0 for none and at 1 for all, at 1 − 0.025^(1/n) on the other side', () => {
    const [none, all] = [exactInterval95({ found: 0, of: 12 }), exactInterval95({ found: 12, of: 12 })];
    expect([none.low, all.high]).toEqual([0, 1]);
    expect(none.high).toBeCloseTo(1 - 0.025 ** (1 / 12), 12);
    expect(all.low).toBeCloseTo(0.025 ** (1 / 12), 12);
  });

  it('says nothing of no draw', () => {
    expect(exactInterval95({ found: 0, of: 0 })).toEqual({ low: 0, high: 1 });
  });
});

describe('a demand', () => {
  it('is missed where the interval lies below what is asked at least, and not before', () => {
    expect([54, 55, 56, 60].map((count) => isMissed(found, { found: count, of: 60 }))).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  it('is missed where the interval lies above what is asked at most, and not before', () => {
    expect([0, 7, 8, 9].map((count) => isMissed(wrong, { found: count, of: 150 }))).toEqual([false, false, true, true]);
  });

  it('of never is missed by one', () => {
    expect([0, 1].map((count) => isMissed(never, { found: count, of: 1000 }))).toEqual([false, true]);
  });

  it('is said with its share and its interval', () => {
    expect(sayAsked(found)).toBe('at least 98 % found');
    expect(sayAsked(never)).toBe('at most 0 % replaced');
    expect(sayCount(wrong, { found: 10, of: 100 })).toBe('10 of 100 called faulty (4.9 to 17.6 %)');
  });
});
