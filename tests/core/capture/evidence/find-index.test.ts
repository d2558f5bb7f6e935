import { expect, it } from 'vitest';
import { indexAt } from '../../../../core/capture/evidence/find-index.ts';

it('finds the first time that is not before, also among equal ones and past the end', () => {
  const times = Float64Array.of(0, 5, 5, 9);
  expect([-1, 0, 1, 5, 6, 9, 10].map((t) => indexAt(times, t))).toEqual([0, 0, 1, 1, 3, 3, 4]);
  expect(indexAt(new Float64Array(0), 3)).toBe(0);
});
