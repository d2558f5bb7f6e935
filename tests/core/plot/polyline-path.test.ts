import { describe, expect, it } from 'vitest';
import { polylinePath, shortNumber } from '../../../core/plot/polyline-path.ts';

describe('polylinePath', () => {
  it('draws points in a row', () => {
    expect(polylinePath([0, 0, 10, 5, 20, 0])).toBe('M0 0L10 5L20 0');
  });

  it('lifts the pen where a value is missing', () => {
    expect(polylinePath([0, 0, 10, Number.NaN, 20, 0, 30, 1])).toBe('M0 0M20 0L30 1');
  });

  it('closes an unbroken line and leaves a broken one open', () => {
    expect(polylinePath([0, 0, 4, 0, 4, 4], true)).toBe('M0 0L4 0L4 4Z');
    expect(polylinePath([0, 0, Number.NaN, 0, 4, 4], true)).toBe('M0 0M4 4');
  });

  it('draws nothing for no points', () => {
    expect(polylinePath([], true)).toBe('');
  });

  it('reads typed columns as well', () => {
    expect(polylinePath(Float64Array.of(1, 2, 3, 4))).toBe('M1 2L3 4');
  });
});

describe('shortNumber', () => {
  it('rounds to a hundredth and writes no negative zero', () => {
    expect([shortNumber(1 / 3), shortNumber(-0.001), shortNumber(12.5)]).toEqual(['0.33', '0', '12.5']);
  });
});
