import { expect, it } from 'vitest';
import { justVisible } from './just-visible.ts';
import { takeCurve } from './take-curve.ts';

/** Of ten, as many as the size is above 2, at most all. */
const find = (asked: number[]) => (size: number) => {
  asked.push(size);
  return Promise.resolve({ found: Math.max(0, Math.min(10, 5 * (size - 2))), of: 10 });
};

it('walks up until all are found twice, then down until none is twice, and no further', async () => {
  const asked: number[] = [];
  const curve = await takeCurve([0, 0.5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 5, 6], 6, find(asked));
  expect(asked).toEqual([3, 3.5, 4, 5, 2.5, 2, 1.5]);
  expect(curve.map(({ size }) => size)).toEqual([1.5, 2, 2.5, 3, 3.5, 4, 5]);
  expect(justVisible(curve)).toBe(3);
});

it('goes through all sizes from the least where it starts there', async () => {
  const asked: number[] = [];
  await takeCurve([1, 2, 3], 0, find(asked));
  expect(asked).toEqual([1, 2, 3]);
});
