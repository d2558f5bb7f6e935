import { expect, test } from 'vitest';
import { ByArrival } from '../../../core/pad/by-arrival.ts';

test('what reads a pad is made anew for each id that comes for the first time, and for no other report', () => {
  const asked: (readonly number[] | null)[] = [];
  const readers = new ByArrival((arriving) => {
    asked.push(arriving === null ? null : [...arriving]);
    return `reader ${String(asked.length)}`;
  });
  expect(readers.now).toBe('reader 1');
  expect([4, 4, 2, 4, 2].map((id) => readers.at(id))).toEqual([
    'reader 2',
    'reader 2',
    'reader 3',
    'reader 3',
    'reader 3',
  ]);
  expect(readers.now).toBe('reader 3');
  expect(asked).toEqual([null, [4], [4, 2]]);
});
