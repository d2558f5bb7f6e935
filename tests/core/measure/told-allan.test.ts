import { describe, expect, it } from 'vitest';
import { gatherEvidence } from '../../../core/capture/gather-evidence.ts';
import { measureAllan } from '../../../core/measure/allan.ts';
import { createRandom } from '../../../core/numeric/random.ts';
import { StickStory } from '../../support/stick-story.ts';

function resting(readings: number, seed: number): StickStory {
  const random = createRandom(seed);
  return new StickStory().move(readings / 1000, () => ({
    x: Math.round(2048 + 5 * random.normal()),
    y: Math.round(2048 + 2 * random.normal()),
  }));
}

function measured(told: StickStory, gaps: { t: number; lost: number | null }[] = []) {
  const track = { ...told.track(), gaps };
  return measureAllan(track, 'left', gatherEvidence(track, 'left'));
}

describe('measureAllan of a told track', () => {
  it('falls with the root of the time for white noise, from the noise itself', () => {
    const allan = measured(resting(8000, 3));
    expect(allan?.tauUs.slice(0, 3)).toEqual([1000, 2000, 4000]);
    expect(allan?.x?.[0]).toBeGreaterThan(4.8);
    expect(allan?.x?.[0]).toBeLessThan(5.2);
    expect(allan?.x?.[4]).toBeGreaterThan(0.9 * (5 / 4));
    expect(allan?.x?.[4]).toBeLessThan(1.1 * (5 / 4));
    expect(allan?.y).toHaveLength(allan?.tauUs.length ?? -1);
  });

  it('is null with fewer than a thousand readings, or over a gap', () => {
    expect(measured(resting(900, 4))).toBeNull();
    expect(measured(resting(3000, 5), [{ t: 1_500_000, lost: null }])).toBeNull();
  });
});
