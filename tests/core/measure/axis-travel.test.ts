import { describe, expect, it } from 'vitest';
import { axisTravel } from '../../../core/measure/axis-travel.ts';
import type { Stretch } from '../../../core/capture/evidence/unbroken-stretches.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { StickStory } from '../../support/stick-story.ts';

/**
 * Six ways over x from 798 to 3298 in two seconds each; the readings tremble by σ = 1, and by `worn` from 1500 to 1600. Each way
 * begins and ends with 50 ms in which the hand jerks by ±20 counts from reading to reading.
 */
function told({ worn = 1, jerks = 0 }: { readonly worn?: number; readonly jerks?: number }) {
  const random = createRandom(15);
  const story = new StickStory();
  const sweeps: Stretch[] = [];
  let count = 0;
  for (let way = 0; way < 6; way += 1) {
    story.move(2, (s) => {
      const share = way % 2 === 0 ? s / 2 : 1 - s / 2;
      const place = 798 + 2500 * share;
      const isEnd = s < 0.05 || s >= 1.95;
      const sigma = place >= 1500 && place <= 1600 ? worn : 1;
      const jerk = isEnd ? jerks * (Math.round(s * 1000) % 2 === 0 ? 1 : -1) : 0;
      return { x: Math.round(place + jerk + sigma * random.normal()), y: 2048 };
    });
    sweeps.push({ from: count, to: count + 2000 });
    count += 2000;
  }
  const track = story.track().sticks.left!;
  return { track, sweeps, all: [{ from: 0, to: count }] };
}
const unsteadyOf = (wish: Parameters<typeof told>[0], isSwept: boolean) => {
  const { track, sweeps, all } = told(wish);
  return axisTravel(track, 'x', all, isSwept ? sweeps : [], 1, 2048)!.unsteady!;
};

describe('the unsteadiness of an axis', () => {
  it('is found where the track is worn, with sweeps and without', () => {
    for (const isSwept of [true, false]) {
      const [found, ...others] = unsteadyOf({ worn: 8 }, isSwept);
      expect(others).toEqual([]);
      expect(found!.from).toBeGreaterThan(1480);
      expect(found!.to).toBeLessThan(1620);
      expect(found!.times).toBeGreaterThan(4);
    }
    expect(unsteadyOf({}, true)).toEqual([]);
  });

  it('is not what a hand does as it sets off and stops at the ends of a sweep', () => {
    const ends = unsteadyOf({ jerks: 20 }, false);
    expect(ends.length).toBeGreaterThan(0);
    for (const { from, to } of ends) expect(to < 900 || from > 3190).toBe(true);
    expect(unsteadyOf({ jerks: 20 }, true)).toEqual([]);
    expect(unsteadyOf({ jerks: 20, worn: 8 }, true)).toHaveLength(1);
  });

  it('is told of the sweeps alone: what lies between them counts for the extents only', () => {
    const { track, sweeps, all } = told({ worn: 8 });
    // The middle of each way is taken for a sweep, the worn place lies before or after it.
    const inner = sweeps.map(({ from, to }) => ({ from: from + 700, to: to - 700 }));
    const found = axisTravel(track, 'x', all, inner, 1, 2048)!;
    expect(found.min).toBeLessThan(805);
    expect(found.max).toBeGreaterThan(3290);
    // Too little of the travel is left to say anything.
    expect(found.unsteady).toBeNull();
    const wide = sweeps.map(({ from, to }, i) => (i % 2 === 0 ? { from: from + 680, to } : { from, to: to - 680 }));
    const most = axisTravel(track, 'x', all, wide, 1, 2048)!;
    expect(most.unsteady ?? []).toEqual([]);
  });
});
