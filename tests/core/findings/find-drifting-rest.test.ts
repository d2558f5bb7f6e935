import { describe, expect, it } from 'vitest';
import { findDriftingRest } from '../../../core/findings/find-drifting-rest.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { Subject } from '../../../core/findings/subject.ts';
import { HALF, makeSubject } from './make-subject.ts';

const { rest } = makeSubject().report;

/** Drift over 100 s, shares of the half travel: x, y and their U. */
function find(x: number, y: number, ux = 0.001, uy = 0.001, subject: Partial<Subject> = {}, releases = 24) {
  const perSecond = (share: number): number => (share * HALF) / 100;
  const drift = { x: perSecond(x), y: perSecond(y), u95: { x: perSecond(ux), y: perSecond(uy) } };
  const report = { rest: { ...rest!, releases, drift } };
  return findDriftingRest(makeSubject({ report, subject: { surveyUs: 100e6, ...subject } }), defaultLimits);
}

describe('findDriftingRest', () => {
  it('takes the way of the rest along both axes, with the uncertainty of both slopes', () => {
    const found = find(0.03, -0.04, 0.003, 0.004)!;
    expect(found.value).toBeCloseTo(0.05, 12);
    expect(found.u95).toBeCloseTo(0.005, 12);
    expect(found).toMatchObject({ limit: 0.02, decision: 'fail', severity: 'caution' });
    expect(found.says).toContain(
      'Over the 100 s of its survey the rest of the left stick moves by 5.0 % ± 0.5 % of the half travel down and right',
    );
  });

  it('decides by 2 %', () => {
    const at = (x: number) => find(x, 0, 0.001, 0)?.decision;
    expect([0.0211, 0.0209, 0.0191, 0.0189].map(at)).toEqual(['fail', 'cannot say', 'cannot say', 'pass']);
  });

  it('takes a slope that is within half as much again as its own uncertainty for none', () => {
    // 0.03 ± 0.0199 is 1.508 times its U, 0.03 ± 0.0201 1.493 times.
    expect(find(0.03, 0, 0.0199, 0)?.decision).toBe('cannot say');
    const none = find(0.03, 0, 0.0201, 0)!;
    expect(none.decision).toBe('pass');
    expect(none.says).toBe('The rest of the left stick shows no drift over 100 s beyond its own scatter.');
  });

  it('grows with the time that the releases took', () => {
    expect(find(0.03, 0, 0.001, 0, { surveyUs: 50e6 })?.value).toBeCloseTo(0.015, 12);
    expect(find(0.03, 0, 0.001, 0, { half: { x: 2 * HALF, y: HALF } })?.value).toBeCloseTo(0.015, 12);
  });

  it('names more than one capture, and a part that was just soldered', () => {
    expect(find(0.05, 0)?.for).toEqual([]);
    expect(find(0.05, 0, 0.001, 0.001, { restCaptures: 3 })?.for[0]).toContain('holds 3 rest captures');
    expect(find(0.05, 0)?.against).toEqual([]);
  });

  it('is absent without a slope, a time or releases enough', () => {
    expect(find(0.05, 0, 0.001, 0.001, { surveyUs: null })).toBeNull();
    expect(find(0.05, 0, 0.001, 0.001, {}, 11)).toBeNull();
    expect(find(0.05, 0, 0.001, 0.001, {}, 12)?.decision).toBe('fail');
    const report = { rest: { ...rest!, drift: null } };
    expect(findDriftingRest(makeSubject({ report }), defaultLimits)).toBeNull();
  });
});
