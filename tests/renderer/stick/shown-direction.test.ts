import { describe, expect, it } from 'vitest';
import { rimPoint } from '../../../renderer/stick/shown-direction.svelte.ts';
import { clippedStick, eightBits, oneRelease, standUnder } from '../support/bench-stick.ts';

describe('rimPoint', () => {
  it('is in counts as reported, where up may be less', () => {
    const evidence = clippedStick();
    const standings = [standUnder(evidence, eightBits)];
    expect(rimPoint(evidence, standings, 90)?.y).toBeCloseTo(7, 9);
    expect(rimPoint(evidence, standings, 0)).toEqual({ x: 255, y: 127 });
  });

  it('is nothing where a direction was not covered', () => {
    expect(rimPoint(oneRelease(), [standUnder(oneRelease())], 105)).toBeNull();
  });
});
