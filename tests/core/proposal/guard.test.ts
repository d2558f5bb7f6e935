import { describe, expect, it } from 'vitest';
import { guardOf } from '../../../core/proposal/guard.ts';
import type { ProposalWish } from '../../../core/proposal/proposal.ts';
import { makeEvidence, type TurnWish } from '../../support/make-evidence.ts';

const middle = { x: 2048, y: 2048 };
const far = { min: 0, centre: 2048, max: 4096 };
const wish: ProposalWish = {
  aim: 'full-reach',
  centreBy: 'mean',
  guard: 0.01,
  widestGap: 10,
  current: { x: far, y: far },
  limits: { whole: true, least: 0, greatest: 4095 },
  seed: 1,
};

/** Every direction has the mean 1010 and Σd² = 1000 over five degrees: σ = √200 counts. The median edge stands at 1010. */
const turns = [
  ...[990, 1000, 1010].map((radius): TurnWish => ({ way: 'clockwise', radius: () => radius })),
  ...[1010, 1020, 1030].map((radius): TurnWish => ({ way: 'counterClockwise', radius: () => radius })),
];

describe('guardOf', () => {
  const evidence = makeEvidence({ turns, about: middle });

  it('is twice the pooled spread of the reach where that is more than the set value', () => {
    expect(guardOf(evidence, middle, wish)).toBeCloseTo((2 * Math.sqrt(200)) / 1010, 12);
  });

  it('is the set value where that is more', () => {
    expect(guardOf(evidence, middle, { ...wish, guard: 0.03 })).toBe(0.03);
  });

  it('takes the spread under the current mapping where the edges would cross the centre', () => {
    // As seen from 4000 the greatest edge lies left of the centre; full output of the current mapping is 2048 counts away.
    expect(guardOf(evidence, { x: 4000, y: 2048 }, wish)).toBeCloseTo((2 * Math.sqrt(200)) / 2048, 12);
  });

  it('is the set value while no spread is known', () => {
    expect(guardOf(makeEvidence({}), middle, wish)).toBe(0.01);
    expect(guardOf(makeEvidence({ turns: [], about: middle }), middle, wish)).toBe(0.01);
    expect(guardOf(makeEvidence({ turns: turns.slice(0, 3), about: middle }), middle, wish)).toBe(0.01);
  });
});
