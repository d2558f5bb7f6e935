import { describe, expect, it } from 'vitest';
import { edgeUncertainty } from '../../../core/proposal/edge-uncertainty.ts';
import type { ProposalWish } from '../../../core/proposal/proposal.ts';
import { makeEvidence, type TurnWish } from '../../support/make-evidence.ts';

const centre = { x: 2048, y: 2048 };
const axis = { min: 800, centre: 2048, max: 3300 };
const wish: ProposalWish = {
  aim: 'edges',
  centreBy: 'mean',
  guard: 0.01,
  widestGap: 10,
  current: { x: axis, y: axis },
  limits: { whole: true, least: 0, greatest: 4095 },
  seed: 1,
};

function evidenceOf(clockwise: readonly number[], counterClockwise: readonly number[]) {
  const turns = [
    ...clockwise.map((radius): TurnWish => ({ way: 'clockwise', radius: () => radius })),
    ...counterClockwise.map((radius): TurnWish => ({ way: 'counterClockwise', radius: () => radius })),
  ];
  return makeEvidence({ turns, about: centre });
}

const unknown = { u95: null, leaveOneOut: null };

describe('edgeUncertainty', () => {
  it('of fewer than eight turns is the range that leaving any one out gives', () => {
    // The median of five is 1010 without one of the three smallest, else 1004.
    const found = edgeUncertainty(evidenceOf([1000, 1004, 1020], [1001, 1010, 1040]), centre, wish);
    const range = (least: number, greatest: number) => ({ u95: null, leaveOneOut: { least, greatest } });
    expect(found).toEqual({
      'x.min': range(2048 - 1010, 2048 - 1004),
      'x.max': range(2048 + 1004, 2048 + 1010),
      'y.min': range(2048 - 1010, 2048 - 1004),
      'y.max': range(2048 + 1004, 2048 + 1010),
    });
    const seven = edgeUncertainty(evidenceOf([1000, 1000, 1000, 1000], [1000, 1000, 1000]), centre, wish);
    expect(seven['x.max']).toEqual(range(3048, 3048));
  });

  it('of eight turns is half of the central 95 % of what turns drawn again give', () => {
    // Four of 1000 and the least of four draws of 1010 or 1030 hold the median: 1005, and 1015 in a sixteenth of the draws.
    const found = edgeUncertainty(evidenceOf([1000, 1000, 1000, 1000], [1010, 1010, 1030, 1030]), centre, wish);
    for (const edge of ['x.min', 'x.max', 'y.min', 'y.max'] as const)
      expect(found[edge]).toEqual({ u95: 5, leaveOneOut: null });
  });

  it('draws the turns of each way apart, so that a difference of the ways does not pass for chance', () => {
    const found = edgeUncertainty(evidenceOf([1000, 1000, 1000, 1000], [1100, 1100, 1100, 1100]), centre, wish);
    expect(found['x.max']).toEqual({ u95: 0, leaveOneOut: null });
  });

  it('is not known without a rim, or where one turn is all there is', () => {
    const all = { 'x.min': unknown, 'x.max': unknown, 'y.min': unknown, 'y.max': unknown };
    expect(edgeUncertainty(makeEvidence({}), centre, wish)).toEqual(all);
    expect(edgeUncertainty(evidenceOf([1000], []), centre, wish)).toEqual(all);
  });
});
