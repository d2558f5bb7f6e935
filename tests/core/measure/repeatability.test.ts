import { describe, expect, it } from 'vitest';
import { differs, repeatabilityLimit } from '../../../core/measure/repeatability.ts';
import { repeatabilityTable } from '../../../core/measure/repeatability-table.ts';
import { expectRelative } from '../../support/expect-close.ts';

describe('repeatability', () => {
  it('has the limit of ISO 5725: 2.77 standard deviations (from memory)', () => {
    expectRelative(repeatabilityLimit('restX') / repeatabilityTable.restX, 2.77, 1e-3);
  });

  it('adds the step of coarse counts', () => {
    expectRelative(repeatabilityLimit('restX', 1000), 1.96 * Math.SQRT2 * (1000 / Math.sqrt(12)), 1e-5);
  });

  it('calls surveys different only beyond the limit, either way', () => {
    const limit = repeatabilityLimit('leastReach');
    expect(differs('leastReach', 1, 1 + 0.99 * limit)).toBe(false);
    expect(differs('leastReach', 1, 1 + 1.01 * limit)).toBe(true);
    expect(differs('leastReach', 1 + 1.01 * limit, 1)).toBe(true);
  });

  it('and only beyond their own uncertainties', () => {
    expect(differs('restX', 2048, 2052, { u95: [3, 4] })).toBe(false);
    expect(differs('restX', 2048, 2054, { u95: [3, 4] })).toBe(true);
  });

  it('says nothing where a value is missing or no number', () => {
    expect(differs('skew', null, 1)).toBeNull();
    expect(differs('skew', 1, NaN)).toBeNull();
  });
});
