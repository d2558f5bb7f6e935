import { describe, expect, it } from 'vitest';
import { formatPair, formatPercent, formatQuantity } from '../../../core/measure/format-quantity.ts';

describe('formatQuantity', () => {
  it('writes the uncertainty with two digits and the value to the same place', () => {
    expect(formatQuantity(2047.8349, 0.4231, 2)).toBe('2047.83 ± 0.42');
    expect(formatQuantity(-2047.8349, 4.231, 2)).toBe('−2047.8 ± 4.2');
    expect(formatQuantity(2047.8349, 42.31, 2)).toBe('2048 ± 42');
    expect(formatQuantity(0.00012345, 0.000031, 4)).toBe('0.000123 ± 0.000031');
  });

  it('without one keeps the decimals asked for, and a dash for what cannot be stated', () => {
    expect(formatQuantity(3.14159, null, 2)).toBe('3.14');
    expect(formatQuantity(null, null, 2)).toBe('–');
    expect(formatQuantity(2, 0, 1)).toBe('2.0 ± 0.0');
  });
});

it('formatPair and formatPercent keep what is not known apart', () => {
  expect(formatPair({ x: 1, y: null }, 1)).toBe('1.0, –');
  expect(formatPair(null, 1)).toBe('–');
  expect(formatPercent(0.01234)).toBe('1.23');
  expect(formatPercent(null)).toBe('–');
});
