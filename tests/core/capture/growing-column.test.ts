import { expect, it } from 'vitest';
import { GrowingColumn } from '../../../core/capture/growing-column.ts';

it('gives back every number pushed, and is empty afterwards', () => {
  const column = new GrowingColumn();
  const numbers = Array.from({ length: 5000 }, (_, i) => i * 1.5);
  for (const number of numbers) column.push(number);
  expect(column.length).toBe(5000);
  expect([...column.take()]).toEqual(numbers);
  expect([...column.take()]).toEqual([]);
  column.push(7);
  expect([...column.take()]).toEqual([7]);
});
