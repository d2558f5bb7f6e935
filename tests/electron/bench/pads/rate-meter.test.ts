import { describe, expect, it } from 'vitest';
import { RateMeter } from '../../../../electron/bench/pads/rate-meter.ts';

function feed(meter: RateMeter, from: number, to: number, every: number): void {
  for (let t = from; t < to; t += every) meter.report(t);
}

describe('rate meter', () => {
  it('says nothing of the rate in the first second', () => {
    const meter = new RateMeter(5_000_000);
    feed(meter, 5_000_000, 5_900_000, 1000);
    expect(meter.rateHz(5_900_000)).toBeNull();
  });

  it.each([125, 250, 1000])('finds %i reports a second', (rate) => {
    const meter = new RateMeter(0);
    feed(meter, 0, 3_000_000, 1e6 / rate);
    expect(meter.rateHz(2_999_999)).toBeCloseTo(rate, -1);
  });

  it('falls to 0 when the reports stop', () => {
    const meter = new RateMeter(0);
    feed(meter, 0, 2_000_000, 1000);
    expect(meter.rateHz(60_000_000)).toBe(0);
    expect(meter.lastReportAt).toBe(1_999_000);
  });

  it('counts what is known to be lost and never guesses', () => {
    const meter = new RateMeter(0);
    expect(meter.lost).toBeNull();
    meter.gap(3);
    meter.gap(4);
    expect([meter.gaps, meter.lost]).toEqual([2, 7]);
    meter.gap(null);
    expect([meter.gaps, meter.lost]).toEqual([3, null]);
  });
});
