import { expect, it } from 'vitest';
import { byteColumn, numberColumn } from '../../../../core/capture/evidence/growing-column.ts';

it('gives back every number pushed, and is empty afterwards', () => {
  const column = numberColumn();
  const numbers = Array.from({ length: 40_000 }, (_, i) => i * 1.5);
  for (const number of numbers) column.push(number);
  expect(column.length).toBe(40_000);
  expect([...column.take()]).toEqual(numbers);
  expect([...column.take()]).toEqual([]);
  column.push(7);
  expect([...column.take()]).toEqual([7]);
});

it('keeps bytes as bytes', () => {
  const column = byteColumn();
  for (let i = 0; i < 20_000; i += 1) column.push(i & 1);
  const taken = column.take();
  expect(taken).toBeInstanceOf(Uint8Array);
  expect(taken).toHaveLength(20_000);
  expect(taken[19_999]).toBe(1);
});
