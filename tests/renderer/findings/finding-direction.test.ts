import { expect, test } from 'vitest';
import { findingDirection } from '../../../renderer/findings/finding-direction.ts';

test('a finding is shown at the middle of its longest stretch, over 0° too', () => {
  expect(findingDirection([90, 95, 350, 355, 0, 5, 10])).toBe(0);
  expect(findingDirection([200, 205, 210])).toBe(205);
});

test('one direction is itself, and none is none', () => {
  expect([findingDirection([90]), findingDirection([])]).toEqual([90, null]);
});
