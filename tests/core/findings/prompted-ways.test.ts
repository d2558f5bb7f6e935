import { describe, expect, it } from 'vitest';
import { promptedWays } from '../../../core/findings/prompted-ways.ts';
import type { Pair } from '../../../core/pad/stick.ts';
import { StickStory } from '../../support/stick-story.ts';

const rest = { x: 2048, y: 2048 };
const at = (degrees: number, share = 0.6): Pair => {
  const turn = (degrees * Math.PI) / 180;
  return { x: rest.x + 2047.5 * share * Math.cos(turn), y: rest.y + 2047.5 * share * Math.sin(turn) };
};
const eight = [0, 45, 90, 135, 180, 225, 270, 315];

interface Ask {
  readonly angle: number;
  readonly story: StickStory;
}

/** A prompt for each angle in one capture, followed by what the hand does. */
function ways(purpose: string, angles: readonly number[], follow: (ask: Ask) => void) {
  const story = new StickStory().hold(0.5, rest);
  story.capture(purpose, () => {
    for (const angle of angles) {
      story.mark('toward', { angle });
      follow({ angle, story });
    }
  });
  return promptedWays(story.hold(0.2, rest).track(), 'left', rest);
}
const push = (story: StickStory, place: Pair, seconds = 0.3) =>
  story.hold(0.3, rest).hold(seconds, place).hold(0.3, rest);

describe('where prompted pushes went', () => {
  it('is where they were asked to go, with the mean by which they went aside', () => {
    expect(ways('rest', eight, ({ angle, story }) => push(story, at(angle)))).toMatchObject({
      prompts: 8,
      astray: 0,
      wiring: 'as it should be',
      agreement: expect.closeTo(1, 9) as number,
      turn: expect.closeTo(0, 6) as number,
      turnU95: expect.closeTo(0, 6) as number,
    });
    // Aside by 5° and 9° in turn: the mean is 7°, s = 2·√(8/7), U = 2·s/√8.
    let number = 0;
    const aside = ways('rest', eight, ({ angle, story }) => push(story, at(angle + 5 + 4 * (number++ % 2))))!;
    expect(aside.turn).toBeCloseTo(7, 6);
    expect(aside.turnU95).toBeCloseTo((2 * 2 * Math.sqrt(8 / 7)) / Math.sqrt(8), 6);
    expect(aside.agreement).toBeCloseTo((Math.cos((5 * Math.PI) / 180) + Math.cos((9 * Math.PI) / 180)) / 2, 6);
  });

  it('tells each wiring, and the turn under it', () => {
    const swapped = ways('rest', eight, ({ angle, story }) => push(story, at(90 - angle + 6)))!;
    expect(swapped).toMatchObject({ wiring: 'swapped', turn: expect.closeTo(6, 6) as number });
    const inverted = ways('rest', eight, ({ angle, story }) => push(story, at(-angle)))!;
    expect(inverted).toMatchObject({ wiring: 'y inverted', turn: expect.closeTo(0, 6) as number });
    // All but the two along x go elsewhere by 90° and more.
    expect(inverted.astray).toBe(0.75);
  });

  it('takes the push that is done again, and no push that is too short to be one', () => {
    const again = ways('rest', eight, ({ angle, story }) => {
      push(story, at(angle + 90));
      push(story, at(angle));
    });
    expect(again).toMatchObject({ wiring: 'as it should be', agreement: expect.closeTo(1, 9) as number });
    const leaping = ways('rest', eight, ({ angle, story }) => {
      push(story, at(angle));
      push(story, at(angle + 180), 0.04);
    });
    expect(leaping).toMatchObject({ wiring: 'as it should be', agreement: expect.closeTo(1, 9) as number });
  });

  it('takes a worn signal that leaps to the rest for one push, not for two', () => {
    const worn = ways('rest', eight, ({ angle, story }) => {
      story.hold(0.3, rest);
      for (let i = 0; i < 6; i += 1) story.hold(0.06, at(angle)).hold(0.02, rest);
      story.hold(0.3, rest);
    });
    expect(worn).toMatchObject({ prompts: 8, wiring: 'as it should be', agreement: expect.closeTo(1, 9) as number });
  });

  it('takes for a mark that comes late the push that is under way', () => {
    const story = new StickStory().hold(0.5, rest);
    story.capture('rest', () => {
      for (const angle of eight) {
        story.hold(0.4, rest).hold(0.2, at(angle)).mark('toward', { angle });
        story.hold(0.2, at(angle)).hold(0.4, rest);
        // What comes after it before the next mark is no answer.
        push(story, at(angle + 180), 0.1);
      }
    });
    expect(promptedWays(story.track(), 'left', rest)).toMatchObject({
      prompts: 8,
      wiring: 'as it should be',
      agreement: expect.closeTo(1, 9) as number,
    });
  });

  it('takes of a sweep, which is marked at its start across from where it goes, the next push', () => {
    const sweeps = ways('travel', eight, ({ angle, story }) => {
      story
        .hold(0.3, at(angle + 180))
        .move(1, (s) => at(angle, 0.6 * (2 * s - 1)))
        .hold(0.3, at(angle));
    });
    expect(sweeps).toMatchObject({ prompts: 8, wiring: 'as it should be', agreement: expect.closeTo(1, 9) as number });
  });

  it('takes of a sweep where it comes in at the gate, not where the hand goes on along it', () => {
    const sweeps = ways('travel', eight, ({ angle, story }) => {
      story
        .hold(0.3, at(angle + 180))
        .move(1, (s) => at(angle, 0.6 * (2 * s - 1)))
        // Along the gate by 100°, pressed a little harder on the way.
        .move(1, (s) => at(angle + 100 * s, 0.6 + 0.05 * s))
        .hold(0.2, at(angle + 100, 0.65));
    });
    expect(sweeps).toMatchObject({ prompts: 8, wiring: 'as it should be', agreement: expect.closeTo(1, 2) as number });
    expect(Math.abs(sweeps!.turn)).toBeLessThan(1);
  });

  it('says nothing with fewer than six prompts that were followed, or of pushes that hardly move', () => {
    const some = (count: number) => ways('rest', eight.slice(0, count), ({ angle, story }) => push(story, at(angle)));
    expect([some(5), some(6)?.prompts]).toEqual([null, 6]);
    expect(ways('rest', eight, ({ angle, story }) => push(story, at(angle, 0.09)))).toBeNull();
    expect(ways('rest', eight, ({ angle, story }) => push(story, at(angle, 0.11)))?.prompts).toBe(8);
    expect(ways('rest', eight, ({ story }) => story.hold(1, rest))).toBeNull();
  });
});
