import { expect, it } from 'vitest';
import { unionLength } from '../../../core/measure/union-length.ts';

it('counts what stretches cover once, in whatever order they come', () => {
  expect(unionLength([])).toBe(0);
  expect(
    unionLength([
      { from: 40, to: 50 },
      { from: 0, to: 10 },
    ]),
  ).toBe(20);
  expect(
    unionLength([
      { from: 0, to: 10 },
      { from: 5, to: 12 },
      { from: 6, to: 7 },
    ]),
  ).toBe(12);
});
