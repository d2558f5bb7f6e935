import { describe, expect, it } from 'vitest';
import { gatherEvidence } from '../../../../core/capture/evidence/gather-evidence.ts';
import type { Track } from '../../../../core/capture/evidence/track.ts';
import { lossesOf, withoutLosses } from '../../../../core/capture/evidence/without-losses.ts';
import { StickStory } from '../../../support/stick-story.ts';

const right = { x: 3298, y: 2048 };
const left = { x: 798, y: 2048 };
const story = (): StickStory => new StickStory().hold(0.2, right).hold(0.3, left);

/** Readings 50 … 59 leave a stick that stands right. */
function lost(): Track {
  const track = new StickStory()
    .hold(0.05, right)
    .press(true)
    .hold(0.01, { x: 2000, y: 2048 })
    .hold(0.14, right)
    .move(1, (s) => ({ x: Math.round(3298 - 2500 * s), y: 2048 }))
    .hold(0.3, left)
    .track();
  return { ...track, sticks: { ...track.sticks, right: story().track().sticks.left! } };
}

describe('a log without what was lost', () => {
  it('lacks the readings in which the signal had left the stick, and nothing else', () => {
    const track = lost();
    expect(lossesOf(track, 'left')).toMatchObject([{ from: 50, to: 60, before: right, after: right }]);
    const clean = withoutLosses(track);
    const { t, x, y, buttonDown } = clean.sticks.left!;
    expect(t).toHaveLength(track.sticks.left!.t.length - 10);
    expect([t[49], t[50]]).toEqual([49_000, 60_000]);
    expect([x[49], x[50], x.includes(2000)]).toEqual([3298, 3298, false]);
    expect(y).toHaveLength(t.length);
    expect([buttonDown[49], buttonDown[50]]).toEqual([0, 1]);
    expect(clean.reportTimes).toBe(track.reportTimes);
    expect(clean.sticks.right).toBe(track.sticks.right);
    expect(lossesOf(track, 'right')).toEqual([]);
  });

  it('has the same losses as the one it was made of, and is its own clean log', () => {
    const track = lost();
    const clean = withoutLosses(track);
    expect(withoutLosses(track)).toBe(clean);
    expect(withoutLosses(clean)).toBe(clean);
    expect(lossesOf(clean, 'left')).toBe(lossesOf(track, 'left'));
  });

  it('is the log itself where nothing was lost', () => {
    const track = story().track();
    expect(withoutLosses(track)).toBe(track);
    expect(lossesOf(track, 'left')).toEqual([]);
    expect(lossesOf(track, 'right')).toEqual([]);
  });

  it('is what evidence is gathered of: a reading that leaves the stick widens no turn', () => {
    const told = new StickStory();
    const place = (turn: number, radius = 1250) => ({
      x: Math.round(2048 + radius * Math.cos(turn)),
      y: Math.round(2048 + radius * Math.sin(turn)),
    });
    told.capture('rim', () => void told.move(7, (s) => place(s)).move(7, (s) => place(7 - s)));
    const track = told.track();
    const readings = track.sticks.left!;
    const x = Float64Array.from(readings.x);
    for (let i = 2000; i < 2010; i += 1) x[i] = 4095;
    const torn = { ...track, sticks: { left: { ...readings, x } } };
    expect(lossesOf(torn, 'left')).toHaveLength(1);
    expect(gatherEvidence(torn, 'left').rim?.turns.map(({ extremes }) => extremes.xMax)).toEqual(
      gatherEvidence(track, 'left').rim?.turns.map(({ extremes }) => extremes.xMax),
    );
  });
});
