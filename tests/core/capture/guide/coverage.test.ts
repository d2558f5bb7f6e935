import { expect, it } from 'vitest';
import { nameStretches, tallyDirections, uncoveredDirections } from '../../../../core/capture/guide/coverage.ts';
import type { Turn } from '../../../../core/capture/evidence/evidence.ts';

function turn(way: Turn['way'], lacking: readonly number[]): Turn {
  return {
    way,
    startUs: 0,
    endUs: 1,
    points: Array.from({ length: 72 }, (_, k) => (lacking.includes(k) ? null : { x: 1, y: 1 })),
    extremes: { xMin: 0, xMax: 1, yMin: 0, yMax: 1 },
  };
}

it('counts the turns each way that have a rim point in a direction', () => {
  const covered = tallyDirections([turn('clockwise', [3]), turn('clockwise', []), turn('counterClockwise', [3, 4])]);
  expect(covered).toHaveLength(72);
  expect(covered[2]).toEqual({ clockwise: 2, counterClockwise: 1 });
  expect(covered[3]).toEqual({ clockwise: 1, counterClockwise: 0 });
  expect(uncoveredDirections(covered, 1)).toEqual([3, 4]);
  const once = { clockwise: 1, counterClockwise: 2 };
  const twice = { clockwise: 2, counterClockwise: 2 };
  expect(uncoveredDirections([twice, once, { clockwise: 2, counterClockwise: 1 }, twice], 2)).toEqual([1, 2]);
});

it('names stretches in order, single ones and one over 0° too', () => {
  expect(nameStretches([])).toEqual([]);
  expect(nameStretches([18])).toEqual(['90°']);
  expect(nameStretches([53, 54, 55, 56, 60])).toEqual(['265°–280°', '300°']);
  expect(nameStretches([0, 1, 2, 71])).toEqual(['355°–10°']);
  expect(nameStretches(Array.from({ length: 72 }, (_, k) => k))).toEqual(['all around']);
});
