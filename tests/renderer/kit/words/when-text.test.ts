import { expect, test } from 'vitest';
import { whenText } from '../../../../renderer/kit/words/when-text.ts';

const now = new Date(2026, 10, 25, 15, 0);

function at(...parts: [number, number, number, number, number]): string {
  return new Date(...parts).toISOString();
}

test('says today, the day, or the year as far as it is needed', () => {
  expect(whenText(at(2026, 10, 25, 9, 5), now)).toBe('today 09:05');
  expect(whenText(at(2026, 0, 3, 9, 5), now)).toBe('3 Jan 09:05');
  expect(whenText(at(2025, 10, 25, 23, 59), now)).toBe('25 Nov 2025 23:59');
  expect(whenText('soon', now)).toBe('time not known');
});
