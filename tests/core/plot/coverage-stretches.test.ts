import { describe, expect, it } from 'vitest';
import type { Coverage } from '../../../core/measure/rim-measure.ts';
import { coverageStretches, stretchName, unrolledSpans } from '../../../core/plot/coverage-stretches.ts';

function statesWithout(angles: readonly number[]): Coverage[] {
  return Array.from({ length: 72 }, (_, index) => (angles.includes(index * 5) ? 'none' : 'covered'));
}

describe('coverageStretches', () => {
  it('finds runs of neighbouring directions', () => {
    expect(coverageStretches(statesWithout([265, 270, 275, 280, 90]), 'none')).toEqual([
      { first: 90, last: 90, count: 1 },
      { first: 265, last: 280, count: 4 },
    ]);
  });

  it('joins a run over 0 degrees', () => {
    expect(coverageStretches(statesWithout([350, 355, 0, 5]), 'none')).toEqual([{ first: 350, last: 5, count: 4 }]);
  });

  it('gives the whole turn as one stretch, and nothing where the state never occurs', () => {
    const none = Array.from({ length: 72 }, (): Coverage => 'none');
    expect(coverageStretches(none, 'none')).toEqual([{ first: 0, last: 355, count: 72 }]);
    expect(coverageStretches(none, 'thin')).toEqual([]);
    expect(coverageStretches([], 'none')).toEqual([]);
  });
});

describe('stretchName', () => {
  it('names a run by its ends and one direction by itself', () => {
    expect(stretchName({ first: 265, last: 280 })).toBe('265–280°');
    expect(stretchName({ first: 90, last: 90 })).toBe('90°');
  });
});

describe('unrolledSpans', () => {
  it('gives each direction half a step to both sides', () => {
    expect(unrolledSpans({ first: 265, last: 280 })).toEqual([[262.5, 282.5]]);
  });

  it('cuts a stretch in two at 0 degrees', () => {
    expect(unrolledSpans({ first: 350, last: 5 })).toEqual([
      [0, 7.5],
      [347.5, 360],
    ]);
    expect(unrolledSpans({ first: 0, last: 10 })).toEqual([
      [0, 12.5],
      [357.5, 360],
    ]);
  });

  it('gives the whole axis for a whole turn', () => {
    expect(unrolledSpans({ first: 0, last: 355 })).toEqual([[0, 360]]);
  });
});
