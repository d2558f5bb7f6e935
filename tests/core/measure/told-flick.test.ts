import { describe, expect, it } from 'vitest';
import { gatherEvidence } from '../../../core/capture/evidence/gather-evidence.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { measureFlick } from '../../../core/measure/flick.ts';
import { StickStory } from '../../support/stick-story.ts';

const rest = { x: 2048, y: 2048 };
const axis = { min: 1048, centre: 2048, max: 3048 };
const mapping: StickMapping = { x: axis, y: axis };

/** An underdamped return: a cosine that dies away. */
function swing(seconds: number, hertz: number, decay: number): number {
  return Math.exp(-decay * seconds) * Math.cos(2 * Math.PI * hertz * seconds);
}

function story(flicks: number, fall: (seconds: number) => number, stepUs = 1000): StickStory {
  const told = new StickStory(stepUs);
  told.capture('rest', () => {
    for (let release = 0; release < 3; release += 1) {
      told.hold(0.4, { x: 3048, y: 2048 });
      told.mark('release').hold(0.9, rest);
    }
  });
  return told.capture('flick', () => {
    for (let flick = 0; flick < flicks; flick += 1) {
      told.hold(0.4, { x: 3048, y: 2048 });
      told.mark('release').move(0.9, (s) => ({ x: Math.round(2048 + 1000 * fall(s)), y: 2048 }));
    }
  });
}

function measured(told: StickStory) {
  const track = told.track();
  return measureFlick(track, 'left', gatherEvidence(track, 'left'), mapping);
}

describe('measureFlick of a told track', () => {
  it('tells how far the stick swings past its rest, and when it stays there', () => {
    const fall = (s: number): number => swing(s, 10, 25);
    const flick = measured(story(4, fall));
    // The first trough of the swing, from its formula: tan ωt = −decay/ω.
    const trough = (Math.PI - Math.atan(25 / (20 * Math.PI))) / (20 * Math.PI);
    expect(flick).toMatchObject({ count: 4, unread: 0 });
    expect(flick?.overshoot.largest).toBeCloseTo(-fall(trough), 2);
    expect(flick?.overshootCounts.mean).toBeCloseTo(-1000 * fall(trough), -1);
    // The envelope falls within the band of 2 counts after ln(1000/2.05)/25 s at the latest.
    expect(flick?.settlingUs.max).toBeLessThan(260_000);
    expect(flick?.settlingUs.max).toBeGreaterThan(180_000);
    expect(flick?.at).toHaveLength(4);
  });

  it('sees no overshoot in a return that creeps home', () => {
    const flick = measured(story(2, (s) => Math.exp(-60 * s)));
    expect(flick?.overshootCounts.largest).toBeLessThanOrEqual(1);
    expect(flick?.settlingUs.p50).toBeLessThan(130_000);
  });

  it('leaves out what comes too sparsely or never settles, and says how many', () => {
    const sparse = story(2, (s) => swing(s, 10, 25), 20_000);
    expect(measured(sparse)).toBeNull();
    const restless = story(1, (s) => swing(s, 10, 25));
    restless.capture('flick', () => {
      restless.hold(0.4, { x: 3048, y: 2048 });
      restless.mark('release').move(0.9, (s) => ({ x: Math.round(2048 + 1000 * swing(s, 5, 1)), y: 2048 }));
    });
    expect(measured(restless)).toMatchObject({ count: 1, unread: 1 });
  });

  it('drops a flick that was asked for once more', () => {
    const told = story(2, (s) => swing(s, 10, 25));
    told.capture('flick', () => {
      told.hold(0.4, { x: 3048, y: 2048 });
      told.mark('release').move(0.9, (s) => ({ x: Math.round(2048 + 1000 * swing(s, 10, 5)), y: 2048 }));
      told.mark('repeat', { of: 'flick' });
    });
    expect(measured(told)).toMatchObject({ count: 2, unread: 0 });
  });

  it('is null without such a capture or a rest', () => {
    expect(measured(new StickStory().capture('rest', () => undefined))).toBeNull();
    const restOnly = story(0, () => 0);
    expect(measured(restOnly)).toBeNull();
  });
});
