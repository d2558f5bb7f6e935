import { describe, expect, it } from 'vitest';
import { Spacer } from '../../../../electron/bench/time/spacer.ts';
import { FakeClock } from '../../../support/fake-clock.ts';

describe('spacer', () => {
  it('tells at once, then at most every 50 ms, and never loses the last', () => {
    const clock = new FakeClock(0);
    const told: number[] = [];
    const spacer = new Spacer(clock, 50, () => told.push(clock.micros() / 1000));
    for (let ms = 0; ms < 120; ms += 10) {
      spacer.call();
      clock.pass(10);
    }
    clock.pass(500);
    expect(told).toEqual([0, 50, 100, 150]);
  });

  it('tells the end at once and nothing after it', () => {
    const clock = new FakeClock(0);
    const told: number[] = [];
    const spacer = new Spacer(clock, 50, () => told.push(clock.micros() / 1000));
    spacer.call();
    spacer.call();
    clock.pass(10);
    spacer.last();
    clock.pass(500);
    expect(told).toEqual([0, 10]);
  });
});
