import { describe, expect, it } from 'vitest';
import { measureWarmUp } from '../../../core/measure/warm-up.ts';
import { StickStory } from '../../support/stick-story.ts';

/** Releases every 2 s with a dwell of 1 s at places by the time, while the stick cools. */
function story(dwells: number, place: (seconds: number, index: number) => number): StickStory {
  const told = new StickStory(4000);
  told.mark('warmUp', { edge: 'begin' });
  for (let index = 0; index < dwells; index += 1) {
    told.hold(1, { x: 3000, y: 2048 });
    const x = place(told.nowUs / 1e6, index);
    told.mark('dwell', { edge: 'begin' }).hold(1, { x, y: 2048 }).mark('dwell', { edge: 'end' });
  }
  return told.mark('warmUp', { edge: 'end' });
}

const jitter = [0.3, -0.2, 0.1, -0.4, 0.2, 0.25, -0.25];
const jitterAt = (index: number): number => jitter[index % jitter.length] ?? 0;

describe('measureWarmUp of a told track', () => {
  it('tells the drift in counts per second and that it goes on', () => {
    const warm = measureWarmUp(story(12, (s, index) => 2048 + 2 * s + jitterAt(index)).track(), 'left');
    expect(warm).toMatchObject({ dwells: 12, steady: false });
    expect(warm?.drift.x).toBeCloseTo(2, 1);
    expect(warm?.drift.y).toBe(0);
    expect(warm?.seconds).toBeCloseTo(22, 3);
  });

  it('calls a rest steady when the last third no longer moves, whatever it did before', () => {
    const cooled = (s: number, index: number): number => 2048 + 60 * Math.exp(-s / 5) + jitterAt(index);
    const warm = measureWarmUp(story(30, cooled).track(), 'left');
    expect(warm?.steady).toBe(true);
    expect(Math.abs(warm?.drift.x ?? 0)).toBeGreaterThan(warm?.drift.u95.x ?? Infinity);
  });

  it('does not say whether it is steady with fewer than eight dwells, and nothing with two', () => {
    expect(measureWarmUp(story(7, () => 2048).track(), 'left')).toMatchObject({ last: null, steady: null });
    expect(measureWarmUp(story(2, () => 2048).track(), 'left')).toBeNull();
    expect(measureWarmUp(new StickStory().hold(1, { x: 1, y: 1 }).track(), 'left')).toBeNull();
  });
});
