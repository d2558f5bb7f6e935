import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HeldMedian } from '../../../../core/capture/evidence/held-median.ts';

function filter(readings: readonly (readonly [number, number, number])[]): { t: number; x: number; y: number }[] {
  const samples: { t: number; x: number; y: number }[] = [];
  const median = new HeldMedian((t, x, y) => samples.push({ t, x, y }));
  for (const [t, x, y] of readings) median.reading(t, x, y);
  median.end();
  return samples;
}

function plainMedian(values: readonly number[]): number[] {
  return values.map((_, i) => {
    const arm = Math.min(2, i, values.length - 1 - i);
    const near = values.slice(i - arm, i + arm + 1).toSorted((a, b) => a - b);
    return near[arm] ?? Number.NaN;
  });
}

describe('HeldMedian', () => {
  it('is the plain running median of five per axis where the intervals are even', () => {
    const values = fc.array(fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 30 })), {
      maxLength: 40,
    });
    fc.assert(
      fc.property(values, (all) => {
        const samples = filter(all.map(([x, y], i) => [i * 4000, x, y]));
        expect(samples.map(({ x }) => x)).toEqual(plainMedian(all.map(([x]) => x)));
        expect(samples.map(({ y }) => y)).toEqual(plainMedian(all.map(([, y]) => y)));
        expect(samples.map(({ t }) => t)).toEqual(all.map((_, i) => i * 4000));
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  it('takes a spike of one or two readings out', () => {
    const xs = [10, 11, 12, 90, 13, 14, 15, 95, 95, 16, 17, 18];
    expect(Math.max(...filter(xs.map((x, i) => [i * 1000, x, 0])).map(({ x }) => x))).toBeLessThan(20);
  });

  it('keeps a place that a pad which reports only changes was held at', () => {
    const xs = [200, 210, 220, 230, 240, 255, 240, 230, 220, 210, 200];
    const heldLong = xs.map((x, i): [number, number, number] => [i * 8000 + (i > 5 ? 400_000 : 0), x, 0]);
    const heldShortly = xs.map((x, i): [number, number, number] => [i * 8000, x, 0]);
    expect(Math.max(...filter(heldLong).map(({ x }) => x))).toBe(255);
    expect(Math.max(...filter(heldShortly).map(({ x }) => x))).toBe(240);
  });

  it('starts afresh after its end', () => {
    const samples: number[] = [];
    const median = new HeldMedian((_, x) => samples.push(x));
    for (const x of [1, 2, 3]) median.reading(x, x, 0);
    median.end();
    for (const x of [50, 60]) median.reading(x, x, 0);
    median.end();
    expect(samples).toEqual([1, 2, 3, 50, 60]);
  });
});
