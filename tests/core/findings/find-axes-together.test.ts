import { describe, expect, it } from 'vitest';
import { findAxesTogether } from '../../../core/findings/find-axes-together.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeSubject } from './make-subject.ts';

const find = (together: number | null) => findAxesTogether(makeSubject({ subject: { together } }), defaultLimits);

describe('findAxesTogether', () => {
  it('decides by 8 %, known to 2 %, whichever way they go together', () => {
    for (const way of [1, -1])
      expect([0.101, 0.099, 0.061, 0.059].map((share) => find(way * share)?.decision)).toEqual([
        'fail',
        'cannot say',
        'cannot say',
        'pass',
      ]);
    const found = find(0.2)!;
    expect(found).toMatchObject({ value: 0.2, u95: 0.02, limit: 0.08, severity: 'fault' });
    expect(found.says).toContain('Each axis of the left stick carries 20.0 % ± 2.0 % of the other one');
  });

  it('shows where the gate is drawn to', () => {
    expect(find(0.2)?.shows.directions).toEqual([45, 225]);
    expect(find(0.2)?.for).toEqual(['The gate comes out drawn toward 45° and 225°.']);
    expect(find(-0.2)).toMatchObject({ value: 0.2, shows: { directions: [135, 315] } });
    expect(find(-0.2)?.for).toEqual(['The gate comes out drawn toward 135° and 315°.']);
  });

  it('is absent without a gate', () => {
    expect(find(null)).toBeNull();
  });
});
