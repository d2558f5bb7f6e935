import { describe, expect, it } from 'vitest';
import { deflect } from '../../../core/mapping/deflect.ts';
import { circleOutline, zoneOutline } from '../../../core/zones/draw-back.ts';
import { reportedFields } from '../../support/fields.ts';

const mapping = { x: { min: 10, centre: 120, max: 250 }, y: { min: 20, centre: 130, max: 235 } };

function deflections(line: readonly number[]) {
  return Array.from({ length: line.length / 2 }, (_, index) =>
    deflect(mapping, reportedFields, { x: line[2 * index]!, y: line[2 * index + 1]! }),
  );
}

describe('the unit circle drawn back', () => {
  it('runs through the four edges of the mapping, up at the least count of y', () => {
    const line = circleOutline(mapping, reportedFields, 1);
    const quarter = (line.length / 2 - 1) / 4;
    const at = (corner: number) =>
      [line[2 * corner], line[2 * corner + 1]].map((count) => Math.round(count! * 1e6) / 1e6);
    expect([0, 1, 2, 3].map((side) => at(side * quarter))).toEqual([
      [250, 130],
      [120, 20],
      [10, 130],
      [120, 235],
    ]);
  });

  it('has magnitude 1 in every corner and is closed', () => {
    const line = circleOutline(mapping, reportedFields, 1);
    for (const { x, y } of deflections(line)) expect(Math.hypot(x, y)).toBeCloseTo(1, 12);
    expect(line.slice(0, 2)).toEqual(line.slice(-2));
  });
});

describe('the outline of a zone', () => {
  it('is a circle of its inner edge for the radial shapes', () => {
    for (const shape of ['radial', 'scaledRadial'] as const)
      for (const { x, y } of deflections(zoneOutline(mapping, reportedFields, { shape, inner: 0.15 })))
        expect(Math.hypot(x, y)).toBeCloseTo(0.15, 12);
  });

  it('is a square for the axial shape', () => {
    const line = zoneOutline(mapping, reportedFields, { shape: 'axial', inner: 0.1 });
    expect(line.map((count) => Math.round(count * 1e6) / 1e6)).toEqual([
      133, 119, 109, 119, 109, 140.5, 133, 140.5, 133, 119,
    ]);
  });
});
