import { describe, expect, it } from 'vitest';
import { findDeadAxis } from '../../../core/findings/find-dead-axis.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeSubject, type SubjectWish } from './make-subject.ts';

function find(xWidth: number, yWidth: number, wish: SubjectWish = {}) {
  const extents = { x: { least: 2000, greatest: 2000 + xWidth }, y: { least: 1000, greatest: 1000 + yWidth } };
  return findDeadAxis(makeSubject({ ...wish, subject: { extents } }), defaultLimits);
}

describe('findDeadAxis', () => {
  it('takes what the quieter axis lacks of the extent of the other, and shows where it stayed', () => {
    const found = find(40, 2000)!;
    expect(found).toMatchObject({ limit: 0.95, decision: 'fail', severity: 'fault' });
    expect(found.value).toBeCloseTo(0.98, 12);
    // Twice a noise of 1.2 counts, of 2000.
    expect(found.u95).toBeCloseTo(0.0012, 12);
    expect(found.says).toContain(
      'The x axis of the left stick stayed within 2000 … 2040 while the other one moved, 2.0 %',
    );
    expect(found.shows.counts).toEqual([{ axis: 'x', from: 2000, to: 2040 }]);
    expect(find(2000, 20)?.shows.counts).toEqual([{ axis: 'y', from: 1000, to: 1020 }]);
  });

  it('decides by 95 % missing', () => {
    expect([97, 99, 102, 103].map((width) => find(width, 2000)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
  });

  it('takes a count for the noise where none is known', () => {
    expect(find(40, 2000, { report: { rest: null } })?.u95).toBeCloseTo(0.001, 12);
  });

  it('wants a fifth of its field of the axis that moved', () => {
    expect(find(0, 818)).toBeNull();
    expect(find(0, 819)).toMatchObject({ value: 1, decision: 'fail' });
    expect(findDeadAxis(makeSubject({ subject: { extents: null } }), defaultLimits)).toBeNull();
  });
});
