import { describe, expect, it } from 'vitest';
import { gatherEvidence } from '../../../core/capture/evidence/gather-evidence.ts';
import type { Track } from '../../../core/capture/evidence/track.ts';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import { measureTravel } from '../../../core/measure/travel.ts';
import { StickStory } from '../../support/stick-story.ts';

const rest = { x: 2048, y: 2048 };

/** Slow motion to and fro with one reading that leaps on its way to the right. */
function story(leap: number): StickStory {
  const told = new StickStory().hold(1, rest);
  return told.move(8, (s) => ({
    x: Math.round(2048 + 1200 * Math.sin(s * 0.8) + (Math.abs(s - 0.7) < 5e-4 ? leap : 0)),
    y: 2048,
  }));
}

/** Only the readings at the times that `keep` wants, as a pad reports that tells changes only. */
function thinned(track: Track, keep: (index: number) => boolean): Track {
  const left = track.sticks.left!;
  const wanted = <T extends Float64Array | Uint8Array>(column: T): T => column.filter((_, i) => keep(i)) as T;
  const { t, x, y, buttonDown } = left;
  const sticks = { left: { ...left, t: wanted(t), x: wanted(x), y: wanted(y), buttonDown: wanted(buttonDown) } };
  return { ...track, sticks, reportTimes: sticks.left.t };
}

const travelOf = (track: Track) => measureTravel(track, 'left', gatherEvidence(track, 'left'));

describe('measureTravel of a told track', () => {
  it('finds a single reading that leaps where reports come evenly', () => {
    expect(travelOf(story(0).track())?.x?.jumps).toBe(0);
    expect(travelOf(story(400).track())?.x).toMatchObject({ jumps: 1, jumpsAt: [expect.closeTo(3090, -2)] });
  });

  it('says nothing of leaps where reports come only now and then', () => {
    // Bursts of four readings and a pause: what lies between two may be a push.
    const burst = thinned(story(400).track(), (i) => i % 40 < 8 && i % 2 === 0);
    expect(travelOf(burst)?.x).toMatchObject({ jumps: null, jumpsAt: [] });
  });
});

describe('captures that were taken and cannot be read', () => {
  const lacksOf = (told: StickStory): string[] =>
    (measureTrack(told.track(), null).sticks.left?.lacks ?? []).map(({ code }) => code);
  const still = (told: StickStory, purpose: string): StickStory => told.capture(purpose, () => void told.hold(1, rest));

  it('say so and what to do, each by its name', () => {
    expect(lacksOf(still(story(0), 'travel'))).toContain('travel-unread');
    expect(lacksOf(still(story(0), 'flick'))).toContain('flick-unread');
    expect(lacksOf(story(0))).not.toContain('flick-unread');
  });
});
