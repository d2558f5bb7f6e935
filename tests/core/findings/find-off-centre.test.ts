import { describe, expect, it } from 'vitest';
import { findOffCentre } from '../../../core/findings/find-off-centre.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeSubject } from './make-subject.ts';

const { rest } = makeSubject().report;

/** Counts from the middle of the range, 2047.5, with U = √(6² + 8²) = 10 counts: 0.008. */
function find(x: number, y = 0, u95: { x: number | null; y: number | null } = { x: 6, y: 8 }) {
  const moved = { ...rest!, point: { x: 2047.5 + x, y: 2047.5 + y }, u95 };
  return findOffCentre(makeSubject({ report: { rest: moved } }), defaultLimits);
}

describe('findOffCentre', () => {
  it('takes how far the rest stands from the middle of the range, and says which way', () => {
    const found = find(-30, 40)!;
    expect(found).toMatchObject({ value: 0.04, limit: 0.033, severity: 'note', decision: 'cannot say' });
    expect(found.u95).toBeCloseTo(0.008, 12);
    expect(found.says).toContain('rests 4.0 % ± 0.8 % of the half travel up and left of the middle');
    expect(find(100)).toMatchObject({ value: 0.08, decision: 'fail', severity: 'caution' });
  });

  it('decides by 3.3 % of the half travel', () => {
    // 0.033 ± 0.008 are 51.25 and 31.25 counts.
    expect([52, 51, 32, 31].map((counts) => find(counts)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
    expect(find(500, 0, { x: null, y: 8 })).toMatchObject({ u95: null, decision: 'cannot say' });
  });
});
