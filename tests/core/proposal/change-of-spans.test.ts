import { expect, it } from 'vitest';
import { changeOf } from '../../../core/proposal/change-of-spans.ts';

it('adds up how far each edge moves, either way', () => {
  const current = { xPlus: 100, xMinus: 200, yPlus: 300, yMinus: 400 };
  expect(changeOf(current, current)).toBe(0);
  expect(changeOf({ xPlus: 101, xMinus: 198, yPlus: 304, yMinus: 392 }, current)).toBe(1 + 2 + 4 + 8);
  expect(changeOf({ xPlus: 99, xMinus: 202, yPlus: 296, yMinus: 408 }, current)).toBe(1 + 2 + 4 + 8);
});
