import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { quantileSorted, takeQuantiles } from '../../../core/numeric/quantile.ts';
import { selectAt } from '../../../core/numeric/select.ts';

const seed = 20_261_129;
/** Few different ones and many, so that ties and their absence both occur. */
const columns = fc.oneof(
  fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 1, maxLength: 400 }),
  fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), { minLength: 1, maxLength: 400 }),
);

describe('selection', () => {
  it('puts the k-th value where sorting would, the smaller before it and the greater behind', () => {
    fc.assert(
      fc.property(columns, fc.double({ min: 0, max: 1, noNaN: true }), (values, share) => {
        const k = Math.min(values.length - 1, Math.floor(share * values.length));
        const column = Float64Array.from(values);
        selectAt(column, k, 0, column.length - 1);
        expect(column[k]! + 0).toBe(Float64Array.from(values).sort()[k]! + 0);
        expect(Math.max(-Infinity, ...column.subarray(0, k))).toBeLessThanOrEqual(column[k]!);
        expect(Math.min(Infinity, ...column.subarray(k))).toBeGreaterThanOrEqual(column[k]!);
        expect(column.toSorted()).toEqual(Float64Array.from(values).sort());
      }),
      { seed },
    );
  });

  it.each([
    ['rises', (i: number) => i],
    ['falls', (i: number) => -i],
    ['is one value', () => 7],
    ['rises and falls', (i: number) => Math.min(i, 49_999 - i)],
    ['goes up and down like a saw', (i: number) => i % 17],
  ])('finds the middle of a long column that %s', (_, at) => {
    const column = Float64Array.from({ length: 50_000 }, (_, i) => at(i));
    const sorted = column.toSorted();
    selectAt(column, 25_000, 0, column.length - 1);
    expect(column[25_000]).toBe(sorted[25_000]);
  });
});

describe('takeQuantiles', () => {
  it('gives at rising fractions what sorting gives, values that are no number last', () => {
    const fractions = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 6 });
    const withGaps = fc.tuple(columns, fc.array(fc.constant(Number.NaN), { maxLength: 5 })).map((two) => two.flat());
    fc.assert(
      fc.property(withGaps, fractions, (values, some) => {
        const rising = some.toSorted((a, b) => a - b);
        const column = Float64Array.from(values.toReversed());
        const sorted = column.toSorted();
        expect(takeQuantiles(column, rising).map((value) => value + 0)).toEqual(
          rising.map((p) => quantileSorted(sorted, p) + 0),
        );
      }),
      { seed },
    );
  });

  it('has no number for a fraction beyond 0 and 1, nor without values', () => {
    expect(takeQuantiles(Float64Array.of(1, 2), [-0.1, 0.5, 1.1])).toEqual([Number.NaN, 1.5, Number.NaN]);
    expect(takeQuantiles(new Float64Array(0), [0.5])).toEqual([Number.NaN]);
  });
});
