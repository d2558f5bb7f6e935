import { expect, it } from 'vitest';
import { findCaptures } from '../../../core/capture/evidence/find-captures.ts';
import { restAbout } from '../../../core/findings/rest-about.ts';
import { StickStory } from '../../support/stick-story.ts';

it('lies in the middle of what creeps back from all around, of the rest captures alone', () => {
  const story = new StickStory(1000).hold(3, { x: 10, y: 10 });
  story.capture('rest', () => {
    for (const way of [1, -1, 1, -1])
      story.move(1, (s) => ({ x: 2048 + way * 1000 * Math.exp(-2 * s), y: 2100 + way * 900 * Math.exp(-2 * s) }));
  });
  const track = story.track();
  const found = restAbout(track.sticks.left!, findCaptures(track, 'left').captures);
  // The least tilt that was reached, 13.5 % of the push, lies on either side of it.
  expect(Math.abs(found.x - 2048)).toBeLessThan(136);
  expect(Math.abs(found.y - 2100)).toBeLessThan(122);
  expect(restAbout(track.sticks.left!, [])).toEqual({ x: Number.NaN, y: Number.NaN });
});
