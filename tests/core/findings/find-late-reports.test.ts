import { describe, expect, it } from 'vitest';
import { findLateReports } from '../../../core/findings/find-late-reports.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { LogMeasure } from '../../../core/measure/timing.ts';

function find(p99Us: number, wish: Partial<LogMeasure> = {}) {
  const log: LogMeasure = {
    durationUs: 1e7,
    reports: 1000,
    lost: null,
    rateHz: 100,
    domain: 'sensor',
    stage: null,
    interval: { p50Us: 1000, p95Us: 1100, p99Us, maxUs: 9000 },
    duplicates: 2,
    damaged: 0,
    ended: null,
    unread: null,
    ...wish,
  };
  return findLateReports(log, defaultLimits);
}

describe('findLateReports', () => {
  it('takes the slowest in a hundred in usual intervals, known to a tenth', () => {
    const found = find(4000)!;
    expect(found).toMatchObject({ value: 4, u95: 0.4, limit: 3, decision: 'fail', severity: 'caution', stick: null });
    expect(found.says).toContain('comes 4.0 ms or more after the one before, 4.0 times the usual interval');
    expect(found.for).toEqual(['Longest interval 9.0 ms.']);
  });

  it('decides by three usual intervals', () => {
    // 3 / 0.9 = 3.33 and 3 / 1.1 = 2.73.
    expect([3340, 3320, 2740, 2720].map((p99Us) => find(p99Us)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
  });

  it('concludes nothing beyond it where no more than one report in a thousand repeats, and passes below all the same', () => {
    const onChange = find(4000, { duplicates: 0 })!;
    expect([1, 2].map((duplicates) => find(4000, { duplicates })?.decision)).toEqual(['cannot say', 'fail']);
    expect(onChange).toMatchObject({ decision: 'cannot say', severity: 'note' });
    expect(onChange.says).toContain('only what changes');
    expect(find(2000, { duplicates: 0 })?.decision).toBe('pass');
  });

  it('is absent below a thousand reports, and without an interval', () => {
    expect(find(4000, { reports: 999 })).toBeNull();
    expect(find(4000, { interval: null })).toBeNull();
    expect(find(4000, { interval: { p50Us: 0, p95Us: 0, p99Us: 4000, maxUs: 9000 } })).toBeNull();
  });
});
