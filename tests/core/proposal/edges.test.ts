import { expect, it } from 'vitest';
import type { Turn } from '../../../core/capture/evidence/evidence.ts';
import { edgesMapping } from '../../../core/proposal/edges.ts';

function turn(xMin: number, xMax: number, yMin: number, yMax: number): Turn {
  return { way: 'clockwise', startUs: 0, endUs: 1, points: [], extremes: { xMin, xMax, yMin, yMax } };
}

it('takes the median over turns of each extreme, as a whole count, whatever the centre', () => {
  const turns = [turn(100, 900, 210, 815), turn(104, 960, 200, 811), turn(180, 903, 207, 700)];
  expect(edgesMapping(turns, { x: 511, y: 499 })).toEqual({
    x: { min: 104, centre: 511, max: 903 },
    y: { min: 207, centre: 499, max: 811 },
  });
  // Of two the mean: 102, 930, 205, 813.
  expect(edgesMapping(turns.slice(0, 2), { x: 5, y: 6 })).toEqual({
    x: { min: 102, centre: 5, max: 930 },
    y: { min: 205, centre: 6, max: 813 },
  });
  expect(edgesMapping([turn(1, 2, 3, 4), turn(2, 3, 4, 5)], { x: 0, y: 0 }).x).toEqual({ min: 2, centre: 0, max: 3 });
});
