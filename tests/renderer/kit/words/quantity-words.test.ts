import { expect, test } from 'vitest';
import { writeNumber, writeQuantity, writeTick } from '../../../../renderer/kit/words/quantity-words.ts';

test('shares are written in per cent of what they are shares of, with as many digits as the uncertainty has', () => {
  expect(writeQuantity(0.0512, 0.0041, 'share of the half travel')).toBe('5.12 ± 0.41\u202f% of the half travel');
  expect(writeQuantity(0.00213, null, 'share of the travel')).toBe('0.21\u202f% of the travel');
});

test('degrees and times carry their sign, anything else its unit', () => {
  expect(writeQuantity(11.2, 2.4, 'degrees')).toBe('11.2 ± 2.4°');
  expect(writeNumber(3, 'times')).toBe('3×');
  expect(writeQuantity(8, null, 'releases')).toBe('8 releases');
  expect(writeNumber(5, 'ms')).toBe('5\u202fms');
  expect(writeQuantity(null, null, 'ms')).toBe('—');
});

test('ticks have the decimals of their step, in the unit that is written', () => {
  expect(writeTick(0.025, 3, 'share of the travel')).toBe('2.5\u202f%');
  expect(writeTick(0.05, 2, 'share')).toBe('5\u202f%');
  expect(writeTick(2.5, 1, 'degrees')).toBe('2.5°');
});
