import { describe, expect, it } from 'vitest';
import { findCaptures } from '../../../core/capture/evidence/find-captures.ts';
import { returnTimes } from '../../../core/findings/return-times.ts';
import type { Pair } from '../../../core/pad/stick.ts';
import { makeDwell } from '../../support/make-evidence.ts';
import { StickStory } from '../../support/stick-story.ts';

const rest = { x: 2048, y: 2048 };
const half = { x: 1250, y: 1000 };
const at = (share: number): Pair => ({ x: rest.x + half.x * share, y: rest.y });

/** Out within 100 ms, held, and back along a straight line in so long; times of what the story holds. */
function push(story: StickStory, share: number, holdSeconds: number, backSeconds: number): StickStory {
  return story
    .move(0.1, (s) => at((share * s) / 0.1))
    .hold(holdSeconds, at(share))
    .move(backSeconds, (s) => at(share * (1 - s / backSeconds)))
    .hold(0.5, rest);
}

function timesOf(tell: (story: StickStory) => void, stepUs = 1000, purpose = 'rest'): number[] {
  const story = new StickStory(stepUs).hold(0.5, rest);
  story.capture(purpose, () => {
    tell(story);
  });
  const track = story.track();
  return returnTimes(track.sticks.left!, findCaptures(track, 'left').captures, rest, half).map(
    ({ seconds }) => seconds,
  );
}

describe('the time of a return', () => {
  it('is that from 80 % to 4 % of the farthest tilt: 76 hundredths of a straight way back', () => {
    const times = timesOf((story) => push(push(story, 1, 0.3, 0.1), 0.6, 0.3, 0.2));
    expect(times).toEqual([expect.closeTo(0.076, 6), expect.closeTo(0.152, 6)]);
  });

  it('is found between readings that come seldom', () => {
    expect(timesOf((story) => push(story, 1, 0.32, 0.16), 16_000)).toEqual([expect.closeTo(0.1216, 6)]);
  });

  it('counts from where the stick came to rest, be it apart from the mean rest', () => {
    const apart = at(0.06);
    const story = new StickStory(1000).hold(0.5, rest);
    story.capture('rest', () => {
      story
        .hold(0.3, at(1))
        .move(0.1, (s) => at(1 - 9.4 * s))
        .hold(1.2, apart);
      push(story, 1, 0.3, 0.1);
    });
    const track = story.track();
    const dwell = (startUs: number, point: Pair) => makeDwell({ point, seconds: startUs / 1e6 + 0.25 });
    const dwells = [dwell(1e6, apart), dwell(2.5e6, rest)];
    const times = (known: typeof dwells) =>
      returnTimes(track.sticks.left!, findCaptures(track, 'left').captures, rest, half, known).map(
        ({ seconds }) => seconds,
      );
    expect(times(dwells)).toEqual([expect.closeTo(0.076, 6), expect.closeTo(0.076, 6)]);
    // From the mean rest the first is never back until the next push.
    expect(times([])[0]).toBeGreaterThan(1);
  });

  it('is no whole one where the next push came before it was over', () => {
    const story = new StickStory(1000).hold(0.5, rest);
    story.capture('rest', () => {
      story
        .hold(0.3, at(1))
        .move(0.7, (s) => at(1 - s))
        .hold(0.3, at(1))
        .move(0.1, (s) => at(1 - 10 * s))
        .hold(0.5, rest);
    });
    const track = story.track();
    const returns = returnTimes(track.sticks.left!, findCaptures(track, 'left').captures, rest, half);
    // From 80 % after 0.2 s to the 30 % that it has come to after 0.7 s.
    expect(returns[0]).toEqual({ seconds: expect.closeTo(0.5, 2) as number, whole: false });
    expect(returns[1]).toEqual({ seconds: expect.closeTo(0.076, 6) as number, whole: true });
  });

  it('is measured in the half travel of each axis', () => {
    const up = (share: number): Pair => ({ x: rest.x, y: rest.y + half.y * share });
    const times = timesOf((story) =>
      story
        .hold(0.3, up(1))
        .move(0.2, (s) => up(1 - 5 * s))
        .hold(0.3, rest),
    );
    expect(times).toEqual([expect.closeTo(0.152, 6)]);
  });

  it('is that of a push: 40 % far at least and 60 ms long', () => {
    expect(timesOf((story) => push(story, 0.39, 0.3, 0.1))).toEqual([]);
    expect(timesOf((story) => push(story, 0.41, 0.3, 0.1))).toHaveLength(1);
    const flick = (seconds: number) => timesOf((story) => story.hold(seconds, at(1)).hold(0.3, rest));
    expect(flick(0.05)).toEqual([]);
    expect(flick(0.07)).toHaveLength(1);
  });

  it('is none where the stick took more than five seconds', () => {
    expect(timesOf((story) => push(story, 1, 0.3, 6.7))).toEqual([]);
    expect(timesOf((story) => push(story, 1, 0.3, 6.5))).toEqual([expect.closeTo(4.94, 3)]);
  });

  it('counts from the last reading far out: a stick that is led about before is no slow one', () => {
    const times = timesOf((story) => {
      story
        .move(1, (s) => at(1 - 0.5 * Math.sin(Math.PI * s)))
        .move(0.1, (s) => at(1 - 10 * s))
        .hold(0.3, rest);
    });
    expect(times).toEqual([expect.closeTo(0.076, 6)]);
  });

  it('is looked for in rest captures alone', () => {
    expect(timesOf((story) => push(story, 1, 0.3, 0.1), 1000, 'flick')).toEqual([]);
  });
});
