import { describe, expect, it } from 'vitest';
import {
  nearestStretch,
  sampleByKey,
  sampleNear,
  stretchFor,
  stripLines,
  stripTable,
} from '../../../renderer/workbench/strip-lines.ts';
import { drawnRows } from '../support/drawn-rows.ts';

const strip = { fromUs: 0, toUs: 100_000, x: [0, 10, 50_000, 30, 100_000, 10], y: [0, 20, 100_000, 25] };

describe('the strip of a finding', () => {
  it('shows its span with room around it, never before the log begins', () => {
    expect(stretchFor({ startUs: 1e6, endUs: 2e6 })).toEqual({ fromUs: 500_000, toUs: 2_500_000 });
    expect(stretchFor({ startUs: 10_000, endUs: 20_000 })).toEqual({ fromUs: 0, toUs: 120_000 });
  });

  it('draws both axes on one scale of counts, higher counts further up', () => {
    const lines = stripLines(strip, 200, 80);
    expect([lines.least, lines.greatest]).toEqual([10, 30]);
    const points = lines.x.match(/[\d.]+ [\d.]+/gu)?.map((pair) => pair.split(' ').map(Number)) ?? [];
    expect(points.map(([across]) => across)).toEqual([0, 100, 200]);
    expect(points[1]![1]).toBeLessThan(points[0]![1]!);
  });

  it('has a table twin with the count of either axis that held at each time', () => {
    expect(drawnRows(stripTable(strip))).toEqual([
      ['0.000', '10', '20'],
      ['0.050', '30', '20'],
    ]);
    expect(stripTable({ ...strip, x: [], y: [] }).rows).toEqual([]);
  });

  it('marks the row of its table that holds the selected sample', () => {
    expect([null, 0, 49_000, 50_000, 90_000].map((at) => stripTable(strip, at).selected)).toEqual([null, 0, 0, 1, 1]);
  });

  it('selects readings, never a time between them', () => {
    expect(sampleNear(strip, 60_000)).toBe(50_000);
    expect(sampleNear({ ...strip, x: [] }, 60_000)).toBeNull();
    const keys = ['ArrowRight', 'ArrowLeft', 'Home', 'End', 'PageDown'];
    expect(keys.map((key) => sampleByKey(strip, key, 50_000))).toEqual([100_000, 0, 0, 100_000, 0]);
    expect(sampleByKey(strip, 'ArrowRight', 100_000)).toBe(100_000);
    expect(sampleByKey(strip, 'q', 50_000)).toBeNull();
  });

  it('begins with the stretch that holds the sample, or the nearest', () => {
    const stretches = [
      { startUs: 10, endUs: 20 },
      { startUs: 40, endUs: 50 },
    ];
    expect([0, 15, 29, 31, 45, 99].map((at) => nearestStretch(stretches, at))).toEqual([0, 0, 0, 1, 1, 1]);
    expect(nearestStretch([], 5)).toBe(0);
  });
});
