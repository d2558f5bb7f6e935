import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SettleDetector, settleLimit } from '../../../../core/capture/evidence/settle-detector.ts';
import type { StickFields } from '../../../../core/pad/stick.ts';
import { eightBits, twelveBits } from '../guide/hand-script.ts';

type Event = readonly ['settled' | 'moved', number];

function watch(fields: StickFields = eightBits): { detector: SettleDetector; events: Event[] } {
  const events: Event[] = [];
  const detector = new SettleDetector(fields, {
    settled: (at) => events.push(['settled', at]),
    moved: (to) => events.push(['moved', to]),
  });
  return { detector, events };
}

describe('SettleDetector', () => {
  it('allows one count, or 0.05 % of the range where that is more', () => {
    expect(settleLimit({ minimum: 0, maximum: 255, up: 1 })).toBe(1);
    expect(settleLimit({ minimum: 0, maximum: 4095, up: 1 })).toBeCloseTo(2.0475, 12);
    expect(settleLimit({ minimum: -32768, maximum: 32767, up: 1 })).toBeCloseTo(32.7675, 12);
  });

  it('is settled 200 ms after the first reading of a stick that stands still', () => {
    const { detector, events } = watch();
    for (let t = 0; t <= 300_000; t += 4000) detector.reading(t, 128, 127, false);
    expect(events).toEqual([['settled', 200_000]]);
  });

  it('takes a silent pad for a still one', () => {
    const { detector, events } = watch();
    detector.reading(3000, 128, 127, false);
    detector.advance(1_000_000);
    expect(events).toEqual([['settled', 210_000]]);
    expect(detector.isSettled).toBe(true);
  });

  it('stays settled over a step of one count and not over a step of two', () => {
    for (const [step, settles] of [
      [1, 1],
      [2, 2],
    ] as const) {
      const { detector, events } = watch();
      for (let t = 0; t < 2_000_000; t += 4000) detector.reading(t, t < 1_000_000 ? 128 : 128 + step, 127, false);
      expect(events.filter(([what]) => what === 'settled')).toHaveLength(settles);
    }
  });

  it('leaves the 100 ms in which the stick moved out of the settled stretch', () => {
    const { detector, events } = watch();
    for (let t = 0; t < 2_000_000; t += 4000) detector.reading(t, t < 1_000_000 ? 128 : 255, 127, false);
    expect(events.slice(0, 2)).toEqual([
      ['settled', 200_000],
      ['moved', 910_000],
    ]);
  });

  it('counts a slow drift of less than a count in 100 ms as settled and a faster one as not', () => {
    const drift = (perSecond: number): Event[] => {
      const { detector, events } = watch(twelveBits);
      for (let t = 0; t < 2_000_000; t += 1000)
        detector.reading(t, Math.round(2048 + (perSecond * t) / 1e6), 2048, false);
      return events;
    };
    expect(drift(15)).toHaveLength(1);
    expect(drift(40)).toHaveLength(0);
  });

  it('is not settled while a button is down, and judges afresh after it', () => {
    const { detector, events } = watch();
    for (let t = 0; t <= 3_000_000; t += 10_000) detector.reading(t, 128, 127, t >= 1_000_000 && t < 2_000_000);
    expect(events).toEqual([
      ['settled', 200_000],
      ['moved', 900_000],
      ['settled', 2_200_000],
    ]);
  });

  it('judges nothing from before a break', () => {
    const { detector, events } = watch();
    detector.reading(0, 128, 127, false);
    detector.break(505_000);
    detector.advance(2_000_000);
    expect(events).toEqual([
      ['settled', 200_000],
      ['moved', 405_000],
      ['settled', 710_000],
    ]);
  });

  it('does not count how often time was told', () => {
    const steps = fc.array(
      fc.record({
        wait: fc.integer({ min: 0, max: 150_000 }),
        x: fc.integer({ min: 120, max: 124 }),
        down: fc.boolean(),
        ticks: fc.integer({ min: 0, max: 4 }),
      }),
      { minLength: 5, maxLength: 60 },
    );
    fc.assert(
      fc.property(steps, (all) => {
        const [seldom, often] = [watch(), watch()];
        let t = 0;
        for (const { wait, x, down, ticks } of all) {
          for (let tick = 1; tick <= ticks; tick += 1)
            often.detector.advance(t + Math.floor((wait * tick) / (ticks + 1)));
          t += wait;
          seldom.detector.reading(t, x, 128, down && wait > 100_000);
          often.detector.reading(t, x, 128, down && wait > 100_000);
        }
        seldom.detector.advance(t + 400_000);
        often.detector.advance(t + 400_000);
        expect(often.events).toEqual(seldom.events);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it('passes years of silence at once', () => {
    const { detector, events } = watch();
    detector.reading(0, 128, 127, false);
    detector.reading(1e15, 200, 127, false);
    detector.advance(1e15 + 500_000);
    expect(events.map(([what]) => what)).toEqual(['settled', 'moved', 'settled']);
  });

  it('says how far the mean moves, once there are two means', () => {
    const { detector } = watch();
    detector.reading(0, 100, 50, false);
    detector.advance(150_000);
    expect(detector.movement).toBeNull();
    detector.reading(200_000, 110, 50, false);
    detector.advance(250_000);
    expect(detector.movement).toEqual({ x: 5, y: 0 });
  });
});
