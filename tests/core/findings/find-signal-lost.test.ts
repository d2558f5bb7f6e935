import { describe, expect, it } from 'vitest';
import type { SignalLoss } from '../../../core/capture/evidence/signal-losses.ts';
import { findSignalLost } from '../../../core/findings/find-signal-lost.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { lossAt, lossToward } from './make-loss.ts';
import { HALF, makeSubject, makeTravel, REST, soundTravel } from './make-subject.ts';

const find = (losses: readonly SignalLoss[], unsteady = soundTravel.unsteady) =>
  findSignalLost(
    makeSubject({
      report: { travel: makeTravel({ x: { ...soundTravel, unsteady } }) },
      subject: { losses, readings: 6000 },
    }),
    defaultLimits,
  )!;
const scattered = (count: number) => Array.from({ length: count }, (_, i) => lossToward(97 * i, i));

describe('findSignalLost', () => {
  it('fails from the third time on, and counts without uncertainty', () => {
    expect([0, 1, 2, 3].map((count) => find(scattered(count)).decision)).toEqual(['pass', 'pass', 'pass', 'fail']);
    expect(find(scattered(3))).toMatchObject({ value: 3, u95: 0, limit: 2, unit: 'times', severity: 'fault' });
    expect(find([]).says).toBe('The reading of the left stick never leaves it.');
    expect(find(scattered(1)).says).toContain('left it once, too seldom');
    expect(find(scattered(2)).says).toContain('left it 2 times, too seldom');
  });

  it('says how often, how long at most, and that it is now here, now there', () => {
    const found = find([...scattered(5), lossAt({ x: 0.1, y: 0.2 }, 9, 48)]);
    expect(found.says).toContain('left it 6 times, once in 1000 readings, for 48 ms at most, now here, now there');
    expect(found.shows).toEqual({
      directions: [],
      counts: [],
      spans: [...[0, 1, 2, 3, 4].map((s) => ({ startUs: 1e6 * s, endUs: 1e6 * s + 5000 })), expect.anything()],
    });
    expect(found.causes[1]).toBe('A wiper that lifts off its track');
  });

  it('names the sector of the gate where they lie, and shows it', () => {
    const found = find([40, 60, 80, 60].map((angle, i) => lossToward(angle, i)));
    expect(found.says).toContain('4 of them while it passes 40° to 80° of its gate');
    expect(found.for[0]).toBe('It leaves at the same place in 4 of the ways along the gate.');
    expect(found.shows.directions).toEqual([40, 45, 50, 55, 60, 65, 70, 75, 80]);
    expect(found.causes[1]).toContain('broken or dirty at that place');
  });

  it('names the counts of an axis where they lie, and shows them', () => {
    const found = find([0.3, 0.32, 0.34].map((x, i) => lossAt({ x, y: 0.3 * i - 0.2 }, i)));
    const [from, to] = [REST.x + 0.3 * HALF, REST.x + 0.34 * HALF];
    expect(found.says).toContain(`3 of them while x passes counts ${from} to ${to}`);
    expect(found.shows.counts).toEqual([{ axis: 'x', from, to }]);
    expect(found.shows.directions).toEqual([]);
  });

  it('leaves it to the track where seven of ten lie where that is worn', () => {
    const worn = [{ from: 2400, to: 2500, times: 9 }];
    const on = (count: number) => Array.from({ length: count }, (_, i) => lossAt({ x: 0.3, y: 0.3 * i - 0.9 }, i));
    const off = (count: number) => Array.from({ length: count }, (_, i) => lossAt({ x: -0.3 * i, y: 0 }, 20 + i));
    expect(find([...on(7), ...off(3)], worn)).toMatchObject({ decision: 'pass', value: 10 });
    expect(find([...on(7), ...off(3)], worn).says).toContain('10 times, nearly always where its track is worn');
    expect(find([...on(6), ...off(4)], worn).decision).toBe('fail');
    expect(find([...on(7), ...off(3)]).decision).toBe('fail');
  });

  it('shows twenty spans at most, and is absent of a stick without readings', () => {
    expect(find(scattered(30)).shows.spans).toHaveLength(20);
    expect(findSignalLost(makeSubject({ subject: { readings: 0 } }), defaultLimits)).toBeNull();
  });
});
