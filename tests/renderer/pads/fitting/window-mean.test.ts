import { expect, test } from 'vitest';
import { windowMean } from '../../../../renderer/pads/fitting/window-mean.ts';
import { ReadingRing } from '../../../../renderer/pads/reading-ring.ts';
import { slotOf } from '../../support/small-pad.ts';

function ringOf(readings: readonly (readonly [number, number])[]): ReadingRing {
  const ring = new ReadingRing(500);
  for (const [t, x] of readings) ring.take(t, slotOf({ axes: [x] }));
  return ring;
}

test('is the plain mean of readings that come evenly, with their sample deviation', () => {
  const readings = Array.from({ length: 100 }, (_none, index) => [index * 1000, index % 2 === 0 ? 10 : 12] as const);
  const result = windowMean(ringOf(readings), 0, 100_000);
  expect(result?.mean).toBeCloseTo(11, 9);
  expect(result?.sigma).toBeCloseTo(Math.sqrt(100 / 99), 9);
  expect(result?.peakToPeak).toBe(2);
  expect(result?.readings).toBe(100);
});

test('lets a reading count until the next one, for a pad that reports only changes', () => {
  // 10 holds for the first 80 ms of the window, 20 for the last 20.
  const result = windowMean(ringOf([[0, 10], [180_000, 20]]), 0, 200_000); // prettier-ignore
  expect(result?.mean).toBeCloseTo(12, 9);
});

test('a pad that is quiet for longer than the window still reads its last count, without a noise', () => {
  const result = windowMean(ringOf([[0, 137]]), 0, 900_000);
  expect(result).toEqual({ mean: 137, sigma: null, peakToPeak: 0, readings: 0 });
});

test('forgets what is older than the window', () => {
  const readings = Array.from({ length: 300 }, (_none, index) => [index * 1000, index < 150 ? 0 : 4000] as const);
  expect(windowMean(ringOf(readings), 0, 299_000)?.mean).toBe(4000);
});

test('states no noise from fewer than twenty readings', () => {
  const readings = Array.from({ length: 19 }, (_none, index) => [index * 5000, index] as const);
  expect(windowMean(ringOf(readings), 0, 90_000)?.sigma).toBeNull();
});

test('keeps its digits for large counts', () => {
  const readings = Array.from({ length: 100 }, (_none, index) => [index * 1000, 4_294_967_000 + (index % 2)] as const);
  expect(windowMean(ringOf(readings), 0, 100_000)?.sigma).toBeCloseTo(Math.sqrt(25 / 99), 6);
});

test('is null before the first reading', () => {
  expect(windowMean(new ReadingRing(4), 0, 1000)).toBeNull();
});
