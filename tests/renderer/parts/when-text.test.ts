import { expect, it } from 'vitest';
import { whenText } from '../../../renderer/parts/when-text.ts';

test('says today, the day, or the year as far as it is needed', () => {
  expect(whenText(at(2026, 10, 25, 9, 5), now)).toBe('today 09:05');
  expect(whenText(at(2026, 0, 3, 9, 5), now)).toBe('3 Jan 09:05');
  expect(whenText(at(2025, 10, 25, 23, 59), now)).toBe('25 Nov 2025 23:59');
  expect(whenText('soon', now)).toBe('time not known');
});
