import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Dwell } from '../../../core/capture/evidence/evidence.ts';
import { chooseCentre } from '../../../core/proposal/choose-centre.ts';

const edges = { x: { min: 800, centre: 2048, max: 3300 }, y: { min: 700, centre: 2048, max: 3500 } };

function dwellAt(x: number, y: number, readings: readonly number[] = [x, y]): Dwell {
  return {
    startUs: 0,
    endUs: 500_000,
    point: { x, y },
    reports: 500,
    variance: { x: 1, y: 1 },
    least: { x, y },
    greatest: { x, y },
    from: null,
    readings,
  };
}

function largest(dwells: readonly Dwell[], cx: number, cy: number): number {
  const part = (u: number, c: number, min: number, max: number): number =>
    u >= c ? (u - c) / (max - c) : (c - u) / (c - min);
  let most = 0;
  for (const { readings } of dwells)
    for (let i = 0; i < readings.length; i += 2)
      most = Math.max(
        most,
        Math.hypot(
          part(readings[i]!, cx, edges.x.min, edges.x.max),
          part(readings[i + 1]!, cy, edges.y.min, edges.y.max),
        ),
      );
  return most;
}

describe('the centre of a proposal', () => {
  it('by the mean is the rounded mean of the rest points', () => {
    expect(chooseCentre([dwellAt(2000, 2100), dwellAt(2011, 2101)], 'mean', edges)).toEqual({ x: 2006, y: 2101 });
  });

  it('by the steadiest is never beaten by any whole count nearby', () => {
    const point = fc.tuple(fc.integer({ min: 2030, max: 2070 }), fc.integer({ min: 2030, max: 2070 }));
    fc.assert(
      fc.property(fc.array(point, { minLength: 1, maxLength: 12 }), (points) => {
        const dwells = points.map(([x, y]) => dwellAt(x, y));
        const centre = chooseCentre(dwells, 'steadiest', edges)!;
        let brute = Infinity;
        for (let x = 2020; x <= 2080; x += 1)
          for (let y = 2020; y <= 2080; y += 1) brute = Math.min(brute, largest(dwells, x, y));
        expect(largest(dwells, centre.x, centre.y)).toBeCloseTo(brute, 11);
      }),
      { seed: 7, numRuns: 40 },
    );
  });

  it('is moved by one outlying release, which the mean hardly is', () => {
    const dwells = [...Array.from({ length: 23 }, () => dwellAt(2048, 2048)), dwellAt(2088, 2048)];
    expect(chooseCentre(dwells, 'steadiest', edges)!.x).toBe(2068);
    expect(chooseCentre(dwells, 'mean', edges)!.x).toBe(2050);
  });

  it('is null where the rest lies outside the current edges', () => {
    expect(chooseCentre([dwellAt(3400, 2048)], 'steadiest', edges)).toBeNull();
  });

  it('is null without a release', () => {
    expect(chooseCentre([], 'mean', edges)).toBeNull();
    expect(chooseCentre([], 'steadiest', edges)).toBeNull();
  });
});
