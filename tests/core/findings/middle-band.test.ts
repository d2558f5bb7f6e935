import { describe, expect, it } from 'vitest';
import { middleBand } from '../../../core/findings/middle-band.ts';
import { StickStory } from '../../support/stick-story.ts';

const rest = { x: 2048, y: 2048 };
const half = { x: 1250, y: 1250 };

interface Wish {
  /** Half of what the pad hides, in half travels. */
  readonly band?: number;
  readonly axis?: 'x' | 'y';
  readonly passes?: number;
  /** Seconds from gate to gate. */
  readonly seconds?: number;
  /** Where the other axis stands, in half travels. */
  readonly aside?: number;
}

/** Sweeps to and fro at an even pace; within the band the pad answers with the middle count. */
function bandOf({ band = 0.1, axis = 'x', passes = 6, seconds = 2, aside = 0 }: Wish) {
  const story = new StickStory().hold(0.5, rest);
  story.capture('travel', () => {
    for (let pass = 0; pass < passes; pass += 1) {
      const way = pass % 2 === 0 ? 1 : -1;
      story.mark('toward', { angle: (axis === 'x' ? 0 : 90) + (way > 0 ? 0 : 180) });
      story.move(seconds, (s) => {
        const share = way * (-1 + (2 * s) / seconds);
        const along = Math.round(rest[axis] + (Math.abs(share) <= band ? 0 : half[axis] * share));
        const across = Math.round(2048 + 1250 * aside);
        return axis === 'x' ? { x: along, y: across } : { x: across, y: along };
      });
      story.hold(0.2, axis === 'x' ? { x: 2048 + 1250 * way, y: 2048 } : { x: 2048, y: 2048 + 1250 * way });
    }
  });
  return middleBand(story.track(), 'left', rest, half);
}

describe('the middle that a pad hides', () => {
  it('is half as wide as the time on its count is to the time of a passage', () => {
    for (const band of [0.03, 0.1, 0.2])
      for (const axis of ['x', 'y'] as const) {
        const found = bandOf({ band, axis })!;
        expect(found.axis).toBe(axis);
        // To half a count, and to a reading of the some 700 in a passage.
        expect(Math.abs(found.width - band)).toBeLessThan(0.0015);
        expect(found.u95).toBeLessThan(0.0015);
        expect(found.u95).toBeGreaterThanOrEqual(0.5 / 1250);
      }
  });

  it('is less than a count wide where nothing is hidden', () => {
    expect(bandOf({ band: 0 })!.width).toBeLessThan(0.0012);
  });

  it('is told by four passages or more', () => {
    expect(bandOf({ passes: 3 })).toBeNull();
    expect(bandOf({ passes: 4 })?.width).toBeCloseTo(0.1, 2);
  });

  it('is not told by passages beside the middle, or by those that stop on the way', () => {
    expect(bandOf({ aside: 0.11 })?.width).toBeCloseTo(0.1, 2);
    expect(bandOf({ aside: 0.13 })).toBeNull();
    // From −35 % to +35 % in more than four seconds.
    expect(bandOf({ seconds: 12, passes: 4 })).toBeNull();
    expect(bandOf({ seconds: 11, passes: 4 })?.width).toBeCloseTo(0.1, 2);
  });

  it('is not told without sweeps', () => {
    const story = new StickStory().hold(0.5, rest);
    story.capture('rest', () => void story.hold(1, rest));
    expect(middleBand(story.track(), 'left', rest, half)).toBeNull();
    expect(middleBand(story.track(), 'right', rest, half)).toBeNull();
  });
});
