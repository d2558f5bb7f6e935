import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ReadingRing } from '../../../renderer/pads/reading-ring.ts';
import { slotOf } from '../support/small-pad.ts';

function filled(capacity: number, values: readonly number[]): ReadingRing {
  const ring = new ReadingRing(capacity);
  values.forEach((value, index) => ring.take(index * 10, slotOf({ axes: [value, -value] })));
  return ring;
}

test('the ring holds the newest readings as a plain list would, whatever its capacity', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9 }), fc.array(fc.integer(), { maxLength: 40 }), (capacity, values) => {
      const ring = filled(capacity, values);
      const kept = values.slice(-capacity);
      const read = kept.map((_value, index) => ring.valueOf(ring.oldest + index, 0));
      expect(read).toEqual(kept);
      expect(ring.newest(1)).toBe(values.length === 0 ? Number.NaN : -values.at(-1)!);
    }),
    { seed: 3 },
  );
});

test('finds the first reading since a time among those it still holds', () => {
  const ring = filled(4, [1, 2, 3, 4, 5, 6]);
  expect(ring.firstSince(0)).toBe(2);
  expect(ring.firstSince(35)).toBe(4);
  expect(ring.firstSince(40)).toBe(4);
  expect(ring.firstSince(51)).toBe(6);
});

test('unrolls a column in time order, from the reading that held before the span, and holds the newest until now', () => {
  const ring = filled(4, [1, 2, 3, 4, 5, 6]);
  const [t, v] = [new Float64Array(5), new Float64Array(5)];
  const written = ring.unroll(0, 35, 70, [], t, v);
  expect([...t.subarray(0, written)]).toEqual([35, 40, 50, 70]);
  expect([...v.subarray(0, written)]).toEqual([4, 5, 6, 6]);
});

test('breaks the column between the readings beside a gap, so that lost time is not drawn over and no reading is lost', () => {
  const ring = filled(8, [1, 2, 3, 4]);
  const [t, v] = [new Float64Array(10), new Float64Array(10)];
  const written = ring.unroll(0, 0, 30, [15], t, v);
  expect([...v.subarray(0, written)]).toEqual([1, 2, Number.NaN, 3, 4]);
  expect([...t.subarray(0, written)]).toEqual([0, 10, 10, 20, 30]);
});

test('an empty ring has no newest reading and unrolls to nothing', () => {
  const ring = new ReadingRing(4);
  expect(ring.newest(0)).toBeNaN();
  expect(ring.newestTime).toBeNaN();
  expect(ring.unroll(0, 0, 100, [], new Float64Array(5), new Float64Array(5))).toBe(0);
});
