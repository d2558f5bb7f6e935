import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { partOdd } from '../../../../core/capture/evidence/part-odd.ts';
import type { Pair } from '../../../../core/pad/stick.ts';
import { reportedFields, sensorFields } from '../../../support/fields.ts';
import { makeDwell } from '../../../support/make-evidence.ts';

const dwellsAt = (points: readonly Pair[]) => points.map((point, i) => makeDwell({ point, seconds: i }));
const alongX = (...xs: readonly number[]): Pair[] => xs.map((x) => ({ x: 2000 + x, y: 2000 }));
const odd = (points: readonly Pair[], fields = sensorFields): number[] =>
  partOdd(dwellsAt(points), fields).odd.map(({ number }) => number);

/** Twelve about 2000: their median distance is 6, so that σ is 8.9 and eight of it 71.2 counts. */
const twelve = [-6, 0, 6, -6, 0, 6, -6, 0, 6, -6, 0, 6];

describe('releases that lie apart', () => {
  it('are those beyond eight σ of the others, by their number among all', () => {
    expect(odd(alongX(...twelve, 71))).toEqual([]);
    expect(odd(alongX(...twelve, 72))).toEqual([13]);
    expect(odd(alongX(-72, ...twelve))).toEqual([1]);
    const swapped = alongX(...twelve, 72).map(({ x, y }) => ({ x: y, y: x }));
    expect(odd(swapped)).toEqual([13]);
  });

  it('are no nearer than 2 % of the half range where all others lie on one point, nor than two counts', () => {
    const still = Array<number>(12).fill(0);
    // 0.02 · 4095 / 2 = 40.95 counts, 0.02 · 255 / 2 = 2.55.
    expect([odd(alongX(...still, 40)), odd(alongX(...still, 41))]).toEqual([[], [13]]);
    const eight = (x: number) => odd(alongX(...still, x), reportedFields);
    expect([eight(2), eight(3)]).toEqual([[], [13]]);
    const narrow = { ...sensorFields, x: { minimum: 0, maximum: 100, up: 1 as const } };
    expect([odd(alongX(...still, 2), narrow), odd(alongX(...still, 2.5), narrow)]).toEqual([[], [13]]);
  });

  it('are one or two of twelve or more: more are no exceptions, and fewer no majority', () => {
    expect(odd(alongX(...twelve, 200, -300))).toEqual([13, 14]);
    expect(odd(alongX(...twelve, 200, -300, 250))).toEqual([]);
    expect(odd(alongX(...twelve.slice(0, 11), 200))).toEqual([12]);
    expect(odd(alongX(...twelve.slice(0, 10), 200))).toEqual([]);
    expect(odd(alongX(...twelve.slice(0, 10), 200, 300))).toEqual([]);
    expect(odd([])).toEqual([]);
  });

  it('leave the others in their order, and all where none is apart', () => {
    const dwells = dwellsAt(alongX(200, ...twelve));
    expect(partOdd(dwells, sensorFields)).toEqual({
      together: dwells.slice(1),
      odd: [{ number: 1, dwell: dwells[0] }],
    });
    const sound = dwellsAt(alongX(...twelve));
    expect(partOdd(sound, sensorFields)).toEqual({ together: sound, odd: [] });
  });

  it('do not depend on where the rest lies, nor on which axis is which', () => {
    const place = fc.record({ x: fc.integer({ min: -60, max: 60 }), y: fc.integer({ min: -60, max: 60 }) });
    const shift = fc.integer({ min: 500, max: 3000 });
    fc.assert(
      fc.property(fc.array(place, { minLength: 10, maxLength: 30 }), shift, shift, (points, dx, dy) => {
        const found = odd(points);
        expect(odd(points.map(({ x, y }) => ({ x: x + dx, y: y + dy })))).toEqual(found);
        expect(odd(points.map(({ x, y }) => ({ x: -y, y: x })))).toEqual(found);
      }),
      { seed: 31, numRuns: 200 },
    );
  });
});
