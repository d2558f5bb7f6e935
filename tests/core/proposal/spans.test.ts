import { describe, expect, it } from 'vitest';
import {
  largestSpans,
  mappingFromSpans,
  meanRadialMiss,
  reachOf,
  sortIntoQuadrants,
  spansFromArray,
  spansOfMapping,
  spansToArray,
} from '../../../core/proposal/spans.ts';
import { reportedFields, sensorFields } from '../../support/fields.ts';

const spans = { xPlus: 10, xMinus: 20, yPlus: 5, yMinus: 40 };

describe('spans', () => {
  it('go into an array and back in one order', () => {
    expect(spansToArray(spans)).toEqual([10, 20, 5, 40]);
    expect(spansFromArray([10, 20, 5, 40])).toEqual(spans);
    expect(spansFromArray([])).toEqual({ xPlus: 0, xMinus: 0, yPlus: 0, yMinus: 0 });
  });

  it('make a mapping and come back from it, also where a count grows downwards', () => {
    const centre = { x: 100, y: 120 };
    const up = mappingFromSpans(centre, spans, sensorFields);
    expect(up).toEqual({ x: { min: 80, centre: 100, max: 110 }, y: { min: 80, centre: 120, max: 125 } });
    const down = mappingFromSpans(centre, spans, reportedFields);
    expect(down).toEqual({ x: { min: 80, centre: 100, max: 110 }, y: { min: 115, centre: 120, max: 160 } });
    expect(spansOfMapping(up, sensorFields)).toEqual(spans);
    expect(spansOfMapping(down, reportedFields)).toEqual(spans);
  });

  it('are as large as the layer holds', () => {
    const limits = { whole: true, least: 10, greatest: 200 };
    const centre = { x: 100, y: 120 };
    expect(largestSpans(centre, sensorFields, limits)).toEqual({ xPlus: 100, xMinus: 90, yPlus: 80, yMinus: 110 });
    expect(largestSpans(centre, reportedFields, limits)).toEqual({ xPlus: 100, xMinus: 90, yPlus: 110, yMinus: 80 });
  });
});

describe('rim points', () => {
  it('are sorted by the pair of spans that they meet, without their signs', () => {
    const { at, count } = sortIntoQuadrants([
      { x: 1, y: 2 },
      { x: -3, y: 4 },
      { x: 5, y: -6 },
      { x: -7, y: -8 },
      { x: 0, y: 9 },
      { x: -9, y: 0 },
    ]);
    expect(count).toBe(6);
    expect(at).toEqual([
      [
        [1, 2, 0, 9],
        [5, 6],
      ],
      [
        [3, 4, 9, 0],
        [7, 8],
      ],
    ]);
  });

  it('reach the length of their parts, each in shares of its span', () => {
    expect(reachOf(3, 4, 1, 1)).toBe(5);
    expect(reachOf(6, 20, 2, 5)).toBe(5);
  });

  it('miss full output by the mean of their distances, above and below alike', () => {
    // Reaches 1, 2, 0.5 and 0.25: off by 0, 1, 0.5 and 0.75.
    const points = [
      { x: 10, y: 0 },
      { x: 0, y: 10 },
      { x: -10, y: 0 },
      { x: 0, y: -10 },
    ];
    expect(meanRadialMiss(sortIntoQuadrants(points), spans)).toBe(2.25 / 4);
    // (−16, −24) reaches √(0.8² + 0.6²) = 1.
    expect(meanRadialMiss(sortIntoQuadrants([{ x: -16, y: -24 }]), spans)).toBeCloseTo(0, 12);
  });
});
