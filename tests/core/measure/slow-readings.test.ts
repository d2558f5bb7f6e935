import { describe, expect, it } from 'vitest';
import { slowReadings } from '../../../core/measure/slow-readings.ts';
import type { Pair } from '../../../core/pad/stick.ts';
import { StickStory } from '../../support/stick-story.ts';

/** Indices of the readings that are not slow and straight on. */
function leftOut(story: StickStory): number[] {
  const track = story.track().sticks.left!;
  return [...slowReadings(track, { from: 0, to: track.t.length })].flatMap((slow, i) => (slow === 1 ? [] : [i]));
}
/** Counts a millisecond: a half range is 2047.5 of them. */
const PACE = 2;
const straight = (from: Pair, degrees: number) => (s: number) => ({
  x: from.x + 1000 * PACE * s * Math.cos((degrees * Math.PI) / 180),
  y: from.y + 1000 * PACE * s * Math.sin((degrees * Math.PI) / 180),
});
/** Half a second toward 0°, half a second on after a turn of the way: the corner is reading 500. */
function corner(degrees: number, pace = 1): StickStory {
  const start = { x: 1000, y: 1500 };
  const bend = straight(start, 0)(0.5 * pace);
  return new StickStory()
    .move(0.5, (s) => straight(start, 0)(s * pace))
    .move(0.5, (s) => straight(bend, degrees)(s * pace));
}

describe('slow readings', () => {
  it('are all of a steady way, and none about a corner within 20 ms', () => {
    expect(leftOut(corner(0))).toEqual([]);
    const out = leftOut(corner(45));
    expect(out[0]).toBeGreaterThanOrEqual(480 - 20);
    expect(out.at(-1)).toBeLessThanOrEqual(520 + 20);
    for (let i = 482; i <= 518; i += 1) expect(out).toContain(i);
  });

  it('know a corner by 0.35 radians, 20°, and a way back as the sharpest', () => {
    expect(leftOut(corner(18))).toEqual([]);
    expect(leftOut(corner(22)).length).toBeGreaterThan(30);
    expect(leftOut(corner(-22)).length).toBeGreaterThan(30);
    expect(leftOut(corner(180)).length).toBeGreaterThan(30);
  });

  it('turn no corner where the stick hardly moves: 1.5 % of the half range to either side', () => {
    // 31 counts in 20 ms are 1.53 counts a millisecond.
    expect(leftOut(corner(90, 1.6 / PACE)).length).toBeGreaterThan(30);
    expect(leftOut(corner(90, 1.45 / PACE))).toEqual([]);
  });

  it('look at five readings to either side where reports come seldom', () => {
    const start = { x: 1000, y: 1500 };
    const story = new StickStory(8000)
      .move(0.48, straight(start, 0))
      .move(0.48, straight(straight(start, 0)(0.48), 90));
    const out = leftOut(story);
    for (let i = 56; i <= 64; i += 1) expect(out).toContain(i);
    expect(out[0]).toBeGreaterThanOrEqual(50);
    expect(out.at(-1)).toBeLessThanOrEqual(70);
  });

  it('are none within 100 ms of faster motion than six half ranges a second, on either axis', () => {
    const fast = (perMilli: number) =>
      new StickStory()
        .hold(0.5, { x: 1000, y: 2000 })
        .move(0.05, (s) => ({ x: 1000, y: 2000 + 1000 * perMilli * s }))
        .hold(0.5, { x: 1000, y: 2000 + 50 * perMilli });
    // 12.285 counts a millisecond.
    expect(leftOut(fast(12))).toEqual([]);
    const out = leftOut(fast(13));
    // Readings 501 to 549 have a step of 13 counts on both sides.
    expect(out).toEqual(Array.from({ length: 249 }, (_, i) => 401 + i));
  });

  it('are those of the stretch alone', () => {
    const track = corner(45).track().sticks.left!;
    expect(slowReadings(track, { from: 0, to: 450 })).toEqual(new Uint8Array(450).fill(1));
    expect(slowReadings(track, { from: 600, to: 900 })).toHaveLength(300);
  });
});
