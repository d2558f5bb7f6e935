import { describe, expect, it } from 'vitest';
import { StillGuide } from '../../../../core/capture/guide/still-guide.ts';
import { sensorFields } from '../../../support/fields.ts';

interface Heard {
  readonly edge: unknown;
  readonly t: number;
}

function guided(tell: (guide: StillGuide) => void): { readonly marks: Heard[]; readonly guide: StillGuide } {
  const marks: Heard[] = [];
  const guide = new StillGuide({
    stick: 'left',
    fields: sensorFields,
    startUs: 0,
    mark: (t, name, detail) => marks.push({ edge: `${name} ${String(detail['edge'])}`, t }),
  });
  tell(guide);
  return { marks, guide };
}

/** Readings at an interval until the guide is done, or for 30 s. */
function rest(guide: StillGuide, intervalUs: number, from = 0, until = 30_000_000): number {
  let t = from;
  for (; t < until && !guide.isDone; t += intervalUs) guide.reading(t, 2048, 2048, false);
  return t;
}

describe('StillGuide', () => {
  it('keeps the hand off until a thousand readings are there, and marks the stretch', () => {
    const { marks, guide } = guided((one) => void rest(one, 1000));
    expect(guide.isDone).toBe(true);
    expect(marks.map(({ edge }) => edge)).toEqual(['still begin', 'still end']);
    expect((marks[1]!.t - marks[0]!.t) / 1000).toBeGreaterThanOrEqual(1000);
  });

  it('waits up to ten seconds for a slower pad, and hardly at all for one that reports on change', () => {
    const slow = guided((one) => void rest(one, 8000));
    expect(slow.marks[1]!.t - slow.marks[0]!.t).toBeGreaterThan(8_000_000);
    const silent = guided((one) => {
      one.reading(0, 2048, 2048, false);
      for (let t = 0; t < 5_000_000 && !one.isDone; t += 20_000) one.advance(t);
      expect(one.isDone).toBe(true);
    });
    expect(silent.marks[1]!.t - silent.marks[0]!.t).toBeLessThan(1_000_000);
  });

  it('ends where the stick is touched, a button goes down or reports are lost, and waits for no stick that is held', () => {
    const ended = (disturb: (guide: StillGuide, t: number) => void) =>
      guided((one) => {
        const t = rest(one, 1000, 0, 700_000);
        disturb(one, t);
        for (let late = t; late < t + 400_000; late += 1000) one.reading(late, 2048, 2048, false);
        expect(one.isDone).toBe(true);
      });
    for (const disturb of [
      (one: StillGuide, t: number) => {
        for (let k = 0; k < 300; k += 1) one.reading(t + k * 1000, 2048 + 10 * k, 2048, false);
      },
      (one: StillGuide, t: number) => one.reading(t, 2048, 2048, true),
      (one: StillGuide) => one.gap(),
    ])
      expect(ended(disturb).marks).toHaveLength(2);
    const held = guided((one) => {
      for (let t = 0; t < 3_000_000; t += 1000) one.reading(t, 2048 + ((t / 1000) % 400), 2048, false);
    });
    expect(held.guide.isDone).toBe(true);
    expect(held.marks).toEqual([]);
  });
});
