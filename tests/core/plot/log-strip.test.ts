import { describe, expect, it } from 'vitest';
import { logStrip } from '../../../core/plot/log-strip.ts';
import { StickStory } from '../../support/stick-story.ts';

const track = new StickStory()
  .hold(1, { x: 2048, y: 2000 })
  .hold(0.001, { x: 3000, y: 2000 })
  .hold(1, { x: 2048, y: 1999 })
  .track().sticks.left!;

describe('logStrip', () => {
  it('loses no peak of a stretch, however few its slices', () => {
    const { x, y } = logStrip(track, 500_000, 1_500_000, 4);
    expect(x.filter((_, index) => index % 2 === 1)).toContain(3000);
    expect(Math.min(...y.filter((_, index) => index % 2 === 1))).toBe(1999);
    expect(x.length).toBeLessThanOrEqual(2 * 5 * 4);
  });

  it('keeps to its stretch, in order of time', () => {
    const { x } = logStrip(track, 900_000, 1_100_000, 50);
    const times = x.filter((_, index) => index % 2 === 0);
    expect(times[0]).toBe(900_000);
    expect(times.at(-1)).toBeLessThanOrEqual(1_100_000);
    expect(times).toEqual(times.toSorted((a, b) => a - b));
  });

  it('is empty for a stretch without readings or length', () => {
    expect(logStrip(track, 9e6, 10e6, 10)).toEqual({ x: [], y: [] });
    expect(logStrip(track, 5e5, 5e5, 10)).toEqual({ x: [], y: [] });
  });
});
