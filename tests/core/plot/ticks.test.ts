import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countTicks, decimalTicks } from '../../../core/plot/ticks.ts';

describe('decimalTicks', () => {
  it('takes the smallest step of 1, 2 or 5 that gives few enough ticks', () => {
    expect(decimalTicks(0.88, 1.08, 5)).toEqual({ step: 0.05, decimals: 2, values: [0.9, 0.95, 1, 1.05] });
    expect(decimalTicks(0, 0.17, 5).values).toEqual([0, 0.05, 0.1, 0.15]);
    expect(decimalTicks(700, 3600, 6).values).toEqual([1000, 1500, 2000, 2500, 3000, 3500]);
  });

  it('writes every tick as the nearest number to its decimals', () => {
    expect(decimalTicks(0, 1, 11).values).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1]);
    expect(decimalTicks(-0.3, 0.3, 7).values).toEqual([-0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3]);
  });

  it('gives the same ticks for a span that runs backwards', () => {
    expect(decimalTicks(10, 0, 6)).toEqual(decimalTicks(0, 10, 6));
  });

  it('gives no ticks for a span without width or without numbers', () => {
    expect(decimalTicks(3, 3, 5).values).toEqual([]);
    expect(decimalTicks(Number.NaN, 3, 5).values).toEqual([]);
  });

  it('keeps every tick inside the span and never gives more than asked', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
        fc.integer({ min: 2, max: 12 }),
        (from, width, most) => {
          const to = from + width;
          fc.pre(to - from > Math.abs(from) * 1e-9);
          const ticks = decimalTicks(from, to, most);
          expect(ticks.values.length).toBeLessThanOrEqual(most);
          const slack = ticks.step * 1e-6;
          for (const value of ticks.values) {
            expect(value).toBeGreaterThanOrEqual(from - slack);
            expect(value).toBeLessThanOrEqual(to + slack);
          }
        },
      ),
      { seed: 12 },
    );
  });
});

describe('countTicks', () => {
  it('steps in powers of two', () => {
    expect(countTicks(0, 4095, 9)).toEqual({
      step: 512,
      decimals: 0,
      values: [0, 512, 1024, 1536, 2048, 2560, 3072, 3584],
    });
    expect(countTicks(0, 255, 4).values).toEqual([0, 64, 128, 192]);
    expect(countTicks(-32768, 32767, 4).values).toEqual([-32768, -16384, 0, 16384]);
  });

  it('never steps less than one count', () => {
    expect(countTicks(0, 3, 100).values).toEqual([0, 1, 2, 3]);
  });
});
