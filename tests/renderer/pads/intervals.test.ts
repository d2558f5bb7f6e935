import { expect, test } from 'vitest';
import { INTERVAL_BINS, intervalPlace, recentIntervals } from '../../../renderer/pads/intervals.ts';
import { ReadingRing } from '../../../renderer/pads/reading-ring.ts';
import { slotOf } from '../support/small-pad.ts';

function ringAt(times: readonly number[]): ReadingRing {
  const ring = new ReadingRing(1000);
  for (const t of times) ring.take(t, slotOf({ axes: [0] }));
  return ring;
}

test('tells median, 95th percentile and longest of the intervals', () => {
  const times = Array.from({ length: 100 }, (_none, index) => index * 1000);
  const result = recentIntervals(ringAt([...times, 99_000 + 12_000]), 111_000);
  expect(result).toMatchObject({ count: 100, medianUs: 1000, p95Us: 1000, longestUs: 12_000 });
});

test('the shares add up to one, and an interval stands in the bin that its place falls into', () => {
  const result = recentIntervals(ringAt([0, 1000, 2000, 10_000]), 10_000)!;
  expect(result.shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
  expect(result.shares[Math.floor(intervalPlace(1000))]).toBeCloseTo(2 / 3, 12);
  expect(result.shares[Math.floor(intervalPlace(8000))]).toBeCloseTo(1 / 3, 12);
});

test('what is outside of the bins counts in the first or the last', () => {
  const result = recentIntervals(ringAt([0, 10, 1_500_000]), 1_500_000)!;
  expect(result.shares[0]).toBe(0.5);
  expect(result.shares[INTERVAL_BINS - 1]).toBe(0.5);
});

test('looks at the last two seconds alone, and says nothing of a single reading', () => {
  expect(recentIntervals(ringAt([0, 5_000_000]), 5_000_000)).toBeNull();
  expect(recentIntervals(ringAt([0, 4_000_000, 4_500_000]), 5_000_000)?.count).toBe(1);
  expect(recentIntervals(new ReadingRing(4), 0)).toBeNull();
});
