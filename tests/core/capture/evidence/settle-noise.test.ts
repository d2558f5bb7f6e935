/** Settling where readings are few and restless: a pad that reports at 66 Hz in sixteen bits. */
import { describe, expect, it } from 'vitest';
import { SettleDetector, settleLimit } from '../../../../core/capture/evidence/settle-detector.ts';
import type { StickFields } from '../../../../core/pad/stick.ts';
import { createRandom } from '../../../../core/numeric/random.ts';

const field = { minimum: -32_768, maximum: 32_767, up: 1 } as const;
const fields: StickFields = { x: field, y: field };
const INTERVAL_US = 15_151;

/** What is told of readings with noise σ about a place by the seconds. */
function told(sigma: number, place: (seconds: number) => number, seconds = 10): (readonly [string, number])[] {
  const random = createRandom(12);
  const events: (readonly [string, number])[] = [];
  const detector = new SettleDetector(fields, {
    settled: (at) => events.push(['settled', at]),
    moved: (to) => events.push(['moved', to]),
  });
  for (let t = 0; t < 1e6 * seconds; t += INTERVAL_US)
    detector.reading(t, Math.round(place(t / 1e6) + sigma * random.normal()), 0, false);
  return events;
}

describe('settling under noise', () => {
  it('has a limit of 33 counts that two means of 6.6 readings cross by noise of 60 counts alone', () => {
    expect(settleLimit(field)).toBeCloseTo(32.8, 1);
    // σ of the difference: 60·√(2/6.6) = 33 counts.
    expect(60 * Math.sqrt(2 / 6.6)).toBeGreaterThan(settleLimit(field));
  });

  it('settles once the noise is known, and stays settled', () => {
    for (const sigma of [10, 40, 60]) {
      const events = told(sigma, () => 0).filter(([, t]) => t > 700_000);
      const last = told(sigma, () => 0).at(-1);
      expect(last?.[0]).toBe('settled');
      expect(events.filter(([what]) => what === 'moved')).toEqual([]);
    }
  });

  it('sees a step of 1 % of the range all the same, and settles after it', () => {
    const events = told(40, (s) => (s < 5 ? 0 : 655)).filter(([, t]) => t > 1_000_000);
    expect(events.map(([what]) => what)).toEqual(['moved', 'settled']);
    expect(events[0]![1]).toBeGreaterThan(4_890_000);
    expect(events[0]![1]).toBeLessThan(5_000_000);
    expect(events[1]![1]).toBeLessThan(5_400_000);
  });

  it('does not take a stick for settled that is more restless than ten times the limit', () => {
    const moved = told(2000, () => 0, 30).filter(([what]) => what === 'moved');
    expect(moved.length).toBeGreaterThan(20);
  });

  it('does not take a steady motion for noise', () => {
    // 5 % of the range a second: 328 counts in 100 ms.
    expect(told(5, (s) => -16_000 + 3277 * s).filter(([, t]) => t > 700_000)).toEqual([]);
  });
});
