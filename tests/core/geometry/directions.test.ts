import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  directionAngles,
  directionCount,
  directionIndex,
  directionRuns,
  directionStep,
  nearestDirection,
  runsOf,
} from '../../../core/geometry/directions.ts';

describe('the directions', () => {
  it('are 72, 5° apart, from 0° on', () => {
    expect([directionCount, directionStep, directionAngles.length]).toEqual([72, 5, 72]);
    expect([directionAngles[0], directionAngles[1], directionAngles[71]]).toEqual([0, 5, 355]);
  });

  it('own half a step to both sides; halfway goes to the greater angle', () => {
    for (const [index, angle] of directionAngles.entries()) {
      for (const off of [-2.4, 0, 2.4]) expect(directionIndex(angle + off)).toBe(index);
    }
    expect(directionIndex(2.5)).toBe(1);
    expect(directionIndex(357.5)).toBe(0);
    expect(directionIndex(-5)).toBe(71);
    expect([nearestDirection(-7.5), nearestDirection(358), nearestDirection(722.6)]).toEqual([355, 0, 5]);
    expect(Object.is(nearestDirection(-2.5), 0)).toBe(true);
  });
});

describe('runs of directions', () => {
  it('join neighbours, over 0° too, in order of their first', () => {
    expect(runsOf([280, 90, 270, 265, 275, 275])).toEqual([
      { first: 90, last: 90, count: 1 },
      { first: 265, last: 280, count: 4 },
    ]);
    expect(runsOf([5, 350, 0, 355, 20])).toEqual([
      { first: 20, last: 20, count: 1 },
      { first: 350, last: 5, count: 4 },
    ]);
  });

  it('are one from 0° on where every direction is in, and none where none is', () => {
    expect(runsOf(directionAngles)).toEqual([{ first: 0, last: 355, count: 72 }]);
    expect(runsOf(directionAngles.slice(1))).toEqual([{ first: 5, last: 355, count: 71 }]);
    expect(runsOf([])).toEqual([]);
  });

  it('hold every direction that is in once, and no other', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(directionCount - 1)), (indices) => {
        const isIn = new Set(indices);
        const held = directionRuns((index) => isIn.has(index)).flatMap(({ first, count }) =>
          Array.from({ length: count }, (_, i) => directionIndex(first + directionStep * i)),
        );
        expect(held.toSorted((a, b) => a - b)).toEqual(indices.toSorted((a, b) => a - b));
      }),
      { seed: 20_261_130 },
    );
  });
});
