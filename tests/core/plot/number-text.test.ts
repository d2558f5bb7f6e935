import { describe, expect, it } from 'vitest';
import { count, percent, signed } from '../../../core/plot/number-text.ts';

describe('numbers as text', () => {
  it('write fractions as per cent', () => {
    expect([percent(0.0583), percent(1, 0), percent(-0.02)]).toEqual(['5.8\u202f%', '100\u202f%', '−2.0\u202f%']);
  });

  it('write a true minus and never minus zero', () => {
    expect([signed(-3), signed(-0.001, 2), signed(2.5, 1)]).toEqual(['−3', '0.00', '2.5']);
  });

  it('write whole counts whole and halves with one decimal', () => {
    expect([count(2114), count(127.5), count(-4)]).toEqual(['2114', '127.5', '−4']);
  });
});
