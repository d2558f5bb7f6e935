import { describe, expect, it } from 'vitest';
import { findWornTrack } from '../../../core/findings/find-worn-track.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { AxisTravel } from '../../../core/measure/travel-measure.ts';
import { makeSubject, makeTravel, soundTravel } from './make-subject.ts';

/** Of 2500 counts of travel. */
function find(x: Partial<AxisTravel>, y: Partial<AxisTravel> = {}) {
  const travel = makeTravel({ x: { ...soundTravel, ...x }, y: { ...soundTravel, ...y } });
  return findWornTrack(makeSubject({ report: { travel } }), defaultLimits);
}
/** A stretch of so many counts whose readings are all off. */
const off = (counts: number) => ({ unsteady: [{ from: 1500, to: 1499 + counts, times: 8 }] });

describe('findWornTrack', () => {
  it('decides by a fifth of a percent of the travel, known to 30 % of itself', () => {
    // 0.002 · 2500 = 5 counts; 5 / 0.7 = 7.1 and 5 / 1.3 = 3.8.
    expect([8, 7, 4, 3].map((counts) => find(off(counts))?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    const found = find(off(10))!;
    expect(found).toMatchObject({ value: 0.004, limit: 0.002, severity: 'fault' });
    expect(found.u95).toBeCloseTo(0.0012, 12);
  });

  it('takes the worse axis and shows where, the longest stretch first', () => {
    const found = find(off(5), {
      unsteady: [
        { from: 900, to: 909, times: 4 },
        { from: 2000, to: 2019, times: 16 },
      ],
      jumps: 3,
    })!;
    // Ten counts half as unsteady count for a quarter: (2.5 + 20) / 2500.
    expect(found.value).toBeCloseTo(22.5 / 2500, 12);
    expect(found.says).toContain(
      'of the y travel of the left stick is unsteady, goes back or is never read (counts 2000 to 2019)',
    );
    expect(found.shows.counts).toEqual([
      { axis: 'y', from: 2000, to: 2019 },
      { axis: 'y', from: 900, to: 909 },
    ]);
    expect(found.for).toEqual([
      'Readings there are 16.0 times as unsteady as elsewhere on the axis.',
      '3 single readings leap and come back.',
    ]);
  });

  it('counts where sweep after sweep goes back, once where it is unsteady or lacks counts too, and says in how many', () => {
    const backwardsAt = [
      { from: 1500, to: 1539.4, sweeps: 5 },
      { from: 2000, to: 2009, sweeps: 3 },
    ];
    const found = find({
      backwardsAt,
      unsteady: [{ from: 1510, to: 1530, times: 9 }],
      runs: [{ from: 2005, to: 2014 }],
    })!;
    expect(found.value).toBeCloseTo((40.4 + 15) / 2500, 12);
    expect(found.says).toContain('(counts 1500 to 1539)');
    expect(found.for[1]).toBe('In 5 sweeps the reading goes back there.');
    expect(found.against[1]).toMatch(/^A hand that stops at the same place/u);
    expect(find({ unsteady: null, missing: null, backwardsAt })?.decision).toBe('fail');
    expect(find({ unsteady: null, missing: null }, { unsteady: null, missing: null })).toBeNull();
  });

  it('counts gaps from three counts on, in steps of the counts', () => {
    const gap = (from: number, to: number, step = 1) => find({ runs: [{ from, to }], step, missing: 9 })!;
    expect(gap(1500, 1501).value).toBe(0);
    expect(gap(1500, 1502).value).toBeCloseTo(3 / 2500, 12);
    expect(gap(1500, 1502).for).toEqual(['3 counts there never occur while their neighbours do.']);
    expect(gap(1500, 1504, 4).value).toBe(0);
    expect(gap(1500, 1508, 4).value).toBeCloseTo(12 / 2500, 12);
  });

  it('counts gaps that overlap once', () => {
    const runs = [
      { from: 1500, to: 1509 },
      { from: 1505, to: 1514 },
      { from: 1507, to: 1508 },
    ];
    expect(find({ runs, missing: 15 })?.value).toBeCloseTo(15 / 2500, 12);
  });
});
