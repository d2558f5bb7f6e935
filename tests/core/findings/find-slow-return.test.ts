import { describe, expect, it } from 'vitest';
import { findSlowReturn } from '../../../core/findings/find-slow-return.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { makeSubject } from './make-subject.ts';

const find = (seconds: readonly number[], intervalUs: number | null = 1000, cut = 0) =>
  findSlowReturn(
    makeSubject({ subject: { returns: seconds.map((one, i) => ({ seconds: one, whole: i >= cut })), intervalUs } }),
    defaultLimits,
  );
/** 25 returns from half of the width below a middle to half of it above: their quartiles lie half of it apart. */
const spread = (middle: number, width: number) =>
  Array.from({ length: 25 }, (_, i) => middle + (width * (i - 12)) / 24);

describe('findSlowReturn', () => {
  it('takes the median, with the uncertainty of a median and an interval of the reports', () => {
    const found = find(spread(0.4, 0.1))!;
    expect(found.value).toBeCloseTo(0.4, 12);
    // σ = 0.05 / 1.349; 1.96 · 1.2533 · σ / √25.
    const median = (1.96 * 1.2533 * 0.05) / 1.349 / 5;
    expect(found.u95).toBeCloseTo(Math.hypot(median, 0.001), 12);
    expect(find(spread(0.4, 0.1), 8000)?.u95).toBeCloseTo(Math.hypot(median, 0.008), 12);
    expect(find(spread(0.4, 0.1), null)?.u95).toBeCloseTo(median, 12);
    expect(found).toMatchObject({ limit: 0.25, unit: 's', severity: 'fault', decision: 'fail' });
    expect(found.says).toBe('Let go, the left stick takes 400 ms ± 18 ms to come back: it creeps back.');
    expect(found.for).toEqual(['Median of 25 releases.']);
  });

  it('decides by a quarter of a second', () => {
    const steady = (seconds: number) => find(Array<number>(6).fill(seconds), 10_000)?.decision;
    expect([0.261, 0.259, 0.241, 0.239].map(steady)).toEqual(['fail', 'cannot say', 'cannot say', 'pass']);
    expect(find(Array<number>(6).fill(0.25))?.next).toContain('let the thumb slip off');
  });

  it('says that it takes longer where most were pushed again before they were back', () => {
    const six = Array<number>(6).fill(0.9);
    expect(find(six, 1000, 4)?.says).toBe(
      'Let go, the left stick takes longer than 900 ms ± 1 ms to come back: it creeps back.',
    );
    expect(find(six, 1000, 4)?.for[1]).toMatch(/^4 of them were not seen to come back/u);
    expect(find(six, 1000, 3)?.says).toContain('takes 900 ms');
    const quick = Array<number>(6).fill(0.1);
    expect([find(quick, 1000, 4), find(quick, 1000, 3)?.decision]).toEqual([null, 'pass']);
  });

  it('says nothing with fewer than four returns', () => {
    expect(find([0.5, 0.5, 0.5])).toBeNull();
    expect(find([0.5, 0.5, 0.5, 0.5])?.decision).toBe('fail');
  });
});
