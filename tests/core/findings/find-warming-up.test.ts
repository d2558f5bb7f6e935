import { describe, expect, it } from 'vitest';
import { findWarmingUp } from '../../../core/findings/find-warming-up.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { WarmUpMeasure } from '../../../core/measure/warm-up-measure.ts';
import { makeSubject } from './make-subject.ts';

const drift = { x: 0.3, y: -0.4, u95: { x: 0.06, y: 0.08 } };

function find(wish: Partial<WarmUpMeasure> = {}) {
  const warmUp = { dwells: 12, drift, last: null, steady: false, seconds: 89.6, ...wish };
  return findWarmingUp(makeSubject({ report: { warmUp }, subject: { half: { x: 1000, y: 1000 } } }), defaultLimits);
}

describe('findWarmingUp', () => {
  it('takes the way of both axes in a minute, in shares of the half travel', () => {
    const found = find()!;
    expect(found.value).toBeCloseTo(0.03, 12);
    expect(found.u95).toBeCloseTo(0.006, 12);
    expect(found).toMatchObject({ limit: null, unit: 'share of the half travel in a minute', severity: 'caution' });
    expect(found.for).toEqual(['Seen over 12 dwells in 90 s.']);
  });

  it('takes the drift of the last stretch where that is known', () => {
    const last = { x: 0, y: 0.1, u95: { x: 0, y: 0.02 } };
    expect(find({ last })?.value).toBeCloseTo(0.006, 12);
    expect(find({ last })?.u95).toBeCloseTo(0.0012, 12);
  });

  it('decides by whether the drift is significant, whatever its size', () => {
    expect([false, true, null].map((steady) => find({ steady })?.decision)).toEqual(['fail', 'pass', 'cannot say']);
    const little = { x: 0.001, y: 0, u95: { x: 0, y: 0 } };
    expect(find({ drift: little })?.decision).toBe('fail');
  });
});
