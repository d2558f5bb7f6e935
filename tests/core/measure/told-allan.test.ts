import { describe, expect, it } from 'vitest';
import { gatherEvidence } from '../../../core/capture/evidence/gather-evidence.ts';
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

  it('is told of a stretch that a survey marks as still, beyond dwells of half a second', () => {
    const random = createRandom(6);
    const noisy = () => ({ x: Math.round(2048 + 5 * random.normal()), y: Math.round(2048 + 2 * random.normal()) });
    const survey = (marked: boolean): StickStory => {
      const told = new StickStory().mark('capture', { purpose: 'rest', edge: 'begin' });
      told.hold(0.3, { x: 3000, y: 2048 }).mark('release').move(0.3, noisy);
      told.mark('dwell', { edge: 'begin' }).move(0.5, noisy).mark('dwell', { edge: 'end' });
      if (marked) told.mark('still', { edge: 'begin' });
      told.move(1.2, noisy);
      if (marked) told.mark('still', { edge: 'end' });
      return told.mark('capture', { purpose: 'rest', edge: 'end' });
    };
    expect(measured(survey(false))).toBeNull();
    expect(measured(survey(true))?.x?.[0]).toBeGreaterThan(4);
  });

  it('is null with fewer than a thousand readings, or over a gap', () => {
    expect(measured(resting(900, 4))).toBeNull();
    expect(measured(resting(3000, 5), [{ t: 1_500_000, lost: null }])).toBeNull();
  });
});
