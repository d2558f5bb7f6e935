import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimateExtremes, POINTS_A_BUCKET } from '../../../core/plot/decimate-extremes.ts';

interface Points {
  readonly t: number[];
  readonly v: number[];
}

function decimate(t: readonly number[], v: readonly number[], from: number, to: number, buckets: number): Points {
  const out = new Float64Array(2 * POINTS_A_BUCKET * buckets);
  const column = { t: Float64Array.from(t), v: Float64Array.from(v), length: t.length };
  const written = decimateExtremes(column, { from, to }, buckets, out);
  const index = Array.from({ length: written }, (_, at) => at);
  return { t: index.map((at) => out[2 * at] ?? 0), v: index.map((at) => out[2 * at + 1] ?? 0) };
}

const record = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 50 }), fc.integer({ min: -1000, max: 1000 })), {
    minLength: 1,
    maxLength: 300,
  })
  .map((steps) => {
    let time = 0;
    return steps.map(([step, value]) => ({ t: (time += step), v: value }));
  });

describe('decimateExtremes', () => {
  it('keeps first, least, greatest and last of each bucket in time order', () => {
    const t = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11];
    const v = [5, 9, 1, 4, 4, 6, 0, 0, 0, 0, 7, 0];
    expect(decimate(t, v, 0, 12, 2)).toEqual({ t: [0, 1, 2, 5, 6, 10, 11], v: [5, 9, 1, 6, 0, 7, 0] });
  });

  it('writes one record of a bucket once', () => {
    expect(decimate([3], [8], 0, 10, 4)).toEqual({ t: [3], v: [8] });
  });

  it('breaks the line after a bucket with a gap', () => {
    const { v } = decimate([0, 1, 2, 6, 7], [1, 2, Number.NaN, 3, 4], 0, 10, 2);
    expect(v).toEqual([1, 2, Number.NaN, 3, 4]);
  });

  it('leaves out what lies before and after the span', () => {
    expect(decimate([0, 5, 10, 15], [1, 2, 3, 4], 5, 10, 5)).toEqual({ t: [5, 10], v: [2, 3] });
  });

  it('reads no further than the length of a half-filled column', () => {
    const out = new Float64Array(2 * POINTS_A_BUCKET);
    const column = { t: Float64Array.of(0, 1, 0, 0), v: Float64Array.of(4, 5, 99, 99), length: 2 };
    expect(decimateExtremes(column, { from: 0, to: 1 }, 1, out)).toBe(2);
    expect(Array.from(out.subarray(0, 4))).toEqual([0, 4, 1, 5]);
  });

  it('writes nothing for an empty column or an empty span', () => {
    expect(decimate([], [], 0, 1, 3).t).toEqual([]);
    expect(decimate([1], [1], 2, 2, 3).t).toEqual([]);
  });

  it('keeps the global least, greatest, first and last value', () => {
    fc.assert(
      fc.property(record, fc.integer({ min: 1, max: 40 }), (points, buckets) => {
        const t = points.map((point) => point.t);
        const v = points.map((point) => point.v);
        const kept = decimate(t, v, t[0] ?? 0, (t.at(-1) ?? 0) + 1, buckets);
        expect(Math.min(...kept.v)).toBe(Math.min(...v));
        expect(Math.max(...kept.v)).toBe(Math.max(...v));
        expect([kept.v[0], kept.v.at(-1)]).toEqual([v[0], v.at(-1)]);
      }),
      { seed: 14 },
    );
  });

  it('writes only points that were measured, never backwards in time, and no more than its promise', () => {
    fc.assert(
      fc.property(record, fc.integer({ min: 1, max: 40 }), (points, buckets) => {
        const t = points.map((point) => point.t);
        const v = points.map((point) => point.v);
        const kept = decimate(t, v, 0, (t.at(-1) ?? 0) + 1, buckets);
        const measured = new Set(points.map((point) => `${point.t} ${point.v}`));
        kept.t.forEach((time, at) => {
          expect(measured).toContain(`${time} ${kept.v[at] ?? ''}`);
          if (at > 0) expect(time).toBeGreaterThanOrEqual(kept.t[at - 1] ?? 0);
        });
        expect(kept.t.length).toBeLessThanOrEqual(4 * buckets);
      }),
      { seed: 15 },
    );
  });
});
