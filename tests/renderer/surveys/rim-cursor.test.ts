import { expect, test } from 'vitest';
import { rimCursor } from '../../../renderer/surveys/rim-cursor.ts';

const fields = {
  x: { minimum: 0, maximum: 4095, up: 1 },
  y: { minimum: 0, maximum: 4095, up: -1 },
} as const;

test('points counter-clockwise from the right with y turned up', () => {
  expect(rimCursor(4000, 2048, fields, [{ x: 2048, y: 2048 }])).toBe(0);
  expect(rimCursor(2048, 100, fields, [{ x: 2048, y: 2048 }])).toBe(90);
  expect(rimCursor(2048, 4000, fields, [{ x: 2048, y: 2048 }])).toBe(270);
});

test('is taken about the mean rest, or the middle of the field where there is none yet', () => {
  expect(rimCursor(4000, 1000, fields, [{ x: 2048, y: 900 }, { x: 2048, y: 1100 }])).toBe(0); // prettier-ignore
  expect(rimCursor(4000, 2047.5, fields, [])).toBe(0);
});

test('points nowhere near the rest and without a reading', () => {
  expect(rimCursor(2200, 2048, fields, [])).toBeNull();
  expect(rimCursor(Number.NaN, 2048, fields, [])).toBeNull();
});
