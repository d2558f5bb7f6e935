import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linearity, type LinearityLine } from '../../../core/numeric/linearity.ts';
import { expectWithin } from '../../support/expect-close.ts';

const seeded = { seed: 20_261_139 };
const lines: readonly LinearityLine[] = ['terminal', 'independent', 'zero'];

/** Readings at whole inputs, several at some. */
const characteristics = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: -100, max: 100 })), {
    minLength: 2,
    maxLength: 25,
  })
  .filter((pairs) => new Set(pairs.map(([x]) => x)).size > 1)
  .map((pairs) => ({ x: pairs.map(([x]) => x), y: pairs.map(([, y]) => y) }));

function deviationFrom({ x, y }: { x: number[]; y: number[] }, slope: number, intercept: number): number {
  return Math.max(...x.map((at, i) => Math.abs(y[i]! - intercept - slope * at)));
}

describe('linearity', () => {
  it('states the deviation of the line it names', () => {
    fc.assert(
      fc.property(characteristics, (pairs) => {
        for (const line of lines) {
          const { slope, intercept, deviation } = linearity(pairs.x, pairs.y, line)!;
          expectWithin(deviation, deviationFrom(pairs, slope, intercept), 1e-9);
        }
      }),
      seeded,
    );
  });

  it('independent: no line tried is nearer, and it is never worse than the other two', () => {
    const tried = fc.tuple(fc.integer({ min: -400, max: 400 }), fc.integer({ min: -200, max: 200 }));
    fc.assert(
      fc.property(characteristics, tried, (pairs, [slope, intercept]) => {
        const { deviation } = linearity(pairs.x, pairs.y, 'independent')!;
        expect(deviation).toBeLessThanOrEqual(deviationFrom(pairs, slope / 4, intercept) + 1e-9);
        for (const line of lines)
          expect(deviation).toBeLessThanOrEqual(linearity(pairs.x, pairs.y, line)!.deviation + 1e-9);
      }),
      seeded,
    );
  });

  it('independent: rests on three points, two on one side', () => {
    const { slope, intercept, deviation } = linearity([0, 1, 2, 3], [0, 5, 5, 6], 'independent')!;
    const offs = [0, 5, 5, 6].map((y, x) => y - intercept - slope * x);
    expect(offs.filter((off) => Math.abs(Math.abs(off) - deviation) < 1e-9).length).toBeGreaterThanOrEqual(3);
  });

  it('zero-based: no slope through the lower end is nearer', () => {
    fc.assert(
      fc.property(characteristics, fc.integer({ min: -400, max: 400 }), (pairs, quarters) => {
        const { slope, intercept, deviation } = linearity(pairs.x, pairs.y, 'zero')!;
        const low = Math.min(...pairs.x);
        const start = intercept + slope * low;
        expect(deviation).toBeLessThanOrEqual(deviationFrom(pairs, quarters / 4, start - (quarters / 4) * low) + 1e-9);
      }),
      seeded,
    );
  });

  it('follows shifts and scales, far from 0 too', () => {
    fc.assert(
      fc.property(characteristics, ({ x, y }) => {
        for (const line of lines) {
          const found = linearity(x, y, line)!;
          const moved = linearity(
            x.map((value) => 1e6 + 8 * value),
            y.map((value) => 16 * value - 1e6),
            line,
          )!;
          expectWithin(moved.deviation, 16 * found.deviation, 1e-6);
          expectWithin(moved.slope, 2 * found.slope, 1e-6);
        }
      }),
      seeded,
    );
  });

  it('is 0 on a line', () => {
    for (const line of lines) expectWithin(linearity([3, 1, 2], [7, 3, 5], line)!.deviation, 0, 1e-12);
  });

  it('says nothing of one input, unequal columns, and values that are no number', () => {
    for (const line of lines) {
      expect(linearity([], [], line)).toBeNull();
      expect(linearity([2, 2], [1, 3], line)).toBeNull();
      expect(linearity([1, 2, 3], [1, 2], line)).toBeNull();
      expect(linearity([1, 2, NaN], [1, 2, 3], line)).toBeNull();
      expect(linearity([1, 2], [1, Infinity], line)).toBeNull();
    }
  });
});
