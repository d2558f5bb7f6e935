import { describe, expect, it } from 'vitest';
import { findClipped } from '../../../core/findings/find-clipped.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { PinnedSide } from '../../../core/findings/pinned-sides.ts';
import type { Subject } from '../../../core/findings/subject.ts';
import { expectRelative } from '../../support/expect-close.ts';
import { reportedFields } from '../../support/fields.ts';
import { HALF, makeSubject, REST } from './make-subject.ts';
import { outlineSeen } from './odd-waves.ts';

/** Seen without any doubt, spans of 1000 counts; the centre where wished. */
const outline = outlineSeen([0, 0, 0, 0], { first: 0, side: 0 });
const rest = makeSubject().report.rest!;
const pin = (axis: 'x' | 'y', side: 1 | -1, count: number, share = 0.9): PinnedSide => ({
  axis,
  side,
  count,
  readings: 90,
  share,
});
const find = (pinned: readonly PinnedSide[], subject: Partial<Subject> = {}) =>
  findClipped(makeSubject({ subject: { outline, pinned, ...subject } }), defaultLimits)!;

describe('findClipped', () => {
  it('takes the share of the side that is cut off, on either side of either axis', () => {
    expect(find([pin('x', 1, REST.x + 960)]).value).toBeCloseTo(0.04, 9);
    expect(find([pin('x', -1, REST.x - 950)]).value).toBeCloseTo(0.05, 9);
    expect(find([pin('y', 1, REST.y + 970)]).value).toBeCloseTo(0.03, 9);
    const found = find([pin('y', -1, REST.y - 900)]);
    expect(found).toMatchObject({ limit: 0.01, decision: 'fail', severity: 'fault' });
    expect(found.says).toContain(`90 readings of the left stick pile up at count ${REST.y - 900} down, 10.0 %`);
    expect(found.shows.counts).toEqual([{ axis: 'y', from: REST.y - 900, to: REST.y - 900 }]);
    expect(found.shows.directions).toEqual([255, 260, 265, 270, 275, 280, 285]);
    expect(find([pin('x', -1, REST.x - 950)]).shows.directions).toContain(180);
    expect(find([pin('y', 1, REST.y + 950)]).shows.directions).toContain(90);
    expect(find([pin('x', 1, REST.x + 950)]).shows.directions.slice(0, 4)).toEqual([0, 5, 10, 15]);
  });

  it('counts from where the gate stands about the rest', () => {
    // The gate's centre stands 10 % right of the rest: full to the right is 1100 counts, to the left 900.
    const shifted = outlineSeen([0.1, 0, 0, 0], { first: 0, side: 0 });
    expect(find([pin('x', 1, REST.x + 1045)], { outline: shifted }).value).toBeCloseTo(0.05, 9);
    expect(find([pin('x', -1, REST.x - 855)], { outline: shifted }).value).toBeCloseTo(0.05, 9);
  });

  it('takes the side that is cut off most, and decides by 1 % with what the outline is known to', () => {
    expect(find([pin('x', 1, REST.x + 960), pin('y', 1, REST.y + 900)]).value).toBeCloseTo(0.1, 9);
    // ln of the span and the centre together: first wave 1e-6, and d by 1 − ½·b₁ of it, 1e-6.
    const doubt = outlineSeen([0, 0, 0, 0], { first: 1e-6, side: 1e-6 });
    const half = 4 / (3 * Math.PI);
    const u95 = 2 * Math.sqrt(1e-6 + (1 - half) ** 2 * 1e-6);
    const at = (cut: number) => find([pin('x', 1, REST.x + 1000 * (1 - cut))], { outline: doubt });
    expectRelative(at(0.04).u95 ?? undefined, u95, 1e-9);
    expect(
      [0.01 + u95 + 1e-4, 0.01 + u95 - 1e-4, 0.01 - u95 + 1e-4, 0.01 - u95 - 1e-4].map((cut) => at(cut).decision),
    ).toEqual(['fail', 'cannot say', 'cannot say', 'pass']);
  });

  it('goes by the way in which the counts of a field grow', () => {
    const subject = makeSubject({
      report: { rest: { ...rest, point: { x: 128, y: 128 } } },
      subject: {
        outline: outlineSeen([0, 0, 0, 0], { first: 0, side: 0 }),
        fields: reportedFields,
        pinned: [pin('y', 1, 128 - 900)],
      },
    });
    expect(findClipped(subject, defaultLimits)?.value).toBeCloseTo(0.1, 9);
  });

  it('is no less than nothing, and says so where no side is pinned', () => {
    expect(find([pin('x', 1, REST.x + 1020)])).toMatchObject({ value: 0, decision: 'pass' });
    const none = find([]);
    expect(none).toMatchObject({ value: 0, u95: 0, decision: 'pass' });
    expect(none.says).toBe('No reading of the left stick stands at a limit of its sensor before the gate stops it.');
  });

  it('cannot say without an outline about a rest, and is absent where nothing can be told', () => {
    const pinned = [pin('x', 1, REST.x + 0.9 * HALF)];
    expect(find(pinned, { outline: null })).toMatchObject({ value: null, u95: null, decision: 'cannot say' });
    expect(find(pinned, { aboutRest: false })).toMatchObject({ value: null, decision: 'cannot say' });
    expect(find(pinned, { domain: 'reported' })).toBeNull();
    const without = (report: Partial<Subject['report']>) =>
      findClipped(makeSubject({ report, subject: { outline, pinned } }), defaultLimits);
    expect(without({ rim: null })).toBeNull();
    expect(without({ rest: null })).toBeNull();
    expect(without({ rest: { ...rest, noise: null } })).toBeNull();
  });
});
