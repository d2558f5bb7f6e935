import { describe, expect, it } from 'vitest';
import { findLooseReturn } from '../../../core/findings/find-loose-return.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { HALF, makeSubject } from './make-subject.ts';

/** 24 rests on a circle: σ_x² + σ_y² = radius² · 24/23. */
const radius = (value: number): number => (value * HALF) / Math.sqrt(24 / 23);
const find = (value: number, releases = 24) =>
  findLooseReturn(makeSubject({ scatter: radius(value), releases }), defaultLimits);

describe('findLooseReturn', () => {
  it('takes the scatter of both axes together, with the uncertainty of a deviation of 46 degrees', () => {
    const found = find(0.02)!;
    expect(found).toMatchObject({ limit: 0.015, decision: 'fail', severity: 'fault' });
    expect(found.value).toBeCloseTo(0.02, 9);
    expect(found.u95).toBeCloseTo((1.96 * 0.02) / Math.sqrt(92), 9);
  });

  it('decides by 1.5 %: U is 20.4 % of the value', () => {
    // 0.015 / (1 − 0.2043) = 0.01885 and 0.015 / (1 + 0.2043) = 0.01246.
    expect([0.0189, 0.0188, 0.0125, 0.0124].map((value) => find(value)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
  });

  it('states no uncertainty with fewer releases than a statement takes', () => {
    expect(find(0.05, 11)).toMatchObject({ u95: null, decision: 'cannot say' });
    expect(find(0.05, 12)).toMatchObject({ decision: 'fail' });
    expect(find(0.05, 1)).toBeNull();
  });

  it('tells friction, where it stays on the side that it came from, from play', () => {
    expect(find(0.03)?.for.join()).toContain('friction');
    const { report } = makeSubject({ scatter: radius(0.03) });
    const sided = (x: number | null, y: number | null) => {
      const rest = { ...report.rest!, hysteresis: { x, y } };
      return findLooseReturn(makeSubject({ report: { rest } }), defaultLimits)?.for.join();
    };
    expect(sided(0, -0.031 * HALF)).toContain('friction holds it there');
    expect(sided(0.029 * HALF, null)).toContain('play in the part');
    expect(find(0.001)?.for.join()).not.toContain('play');
  });

  it('says that a rest which still drifts after soldering looks the same', () => {
    const drift = { x: 0, y: 0, u95: { x: 1, y: 1 } };
    const against = (steady: boolean | null) => {
      const warmUp = { dwells: 9, drift, last: null, steady, seconds: 60 };
      return findLooseReturn(makeSubject({ report: { warmUp } }), defaultLimits)?.against.length;
    };
    expect([against(false), against(true), against(null)]).toEqual([1, 0, 0]);
  });

  it('cannot say where the pad reports one and the same count after every release', () => {
    const still = (domain: 'sensor' | 'reported', value = 0) =>
      findLooseReturn(makeSubject({ scatter: radius(value), subject: { domain } }), defaultLimits)!;
    const hidden = still('reported');
    expect(hidden).toMatchObject({ decision: 'cannot say', value: 0, severity: 'note' });
    expect(hidden.says).toContain('After 24 releases the pad reports the left stick at one and the same count');
    // Half a step of either axis stands for the scatter.
    expect(hidden.u95).toBeCloseTo((1.96 * Math.SQRT2) / 2 / HALF / Math.sqrt(92), 12);
    expect(still('sensor').decision).toBe('pass');
    expect(still('reported', 0.001).decision).toBe('pass');
    expect(still('reported', 0.03).decision).toBe('fail');
  });
});
