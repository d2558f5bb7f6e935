/** What a sound gate may pretend stands in the uncertainty of every finding that is taken from its outline. */
import { describe, expect, it } from 'vitest';
import { findSeat } from '../../../core/findings/find-seat.ts';
import { findShortRange } from '../../../core/findings/find-short-range.ts';
import { findSkewed } from '../../../core/findings/find-skewed.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { HALF, makeSubject, shiftedGate, shortGate, skewedGate } from './make-subject.ts';

const limits = defaultLimits;
const { rest } = makeSubject().report;
const surely = { ...rest!, u95: { x: 0, y: 0 } };

describe('of an outline that fits to rounding', () => {
  it('a seat is known to 0.2 % and to what the rest is known', () => {
    const at = (u95: { x: number | null; y: number | null }) =>
      findSeat(makeSubject({ radius: shiftedGate(0.05), report: { rest: { ...rest!, u95 } } }), limits);
    expect(at({ x: 0, y: 0 })?.u95).toBeCloseTo(0.002, 5);
    // 3 and 4 counts are 0.4 % of 1250: √(0.4² + 0.2²) %.
    expect(at({ x: 3, y: 4 })?.u95).toBeCloseTo(Math.hypot(5 / HALF, 0.002), 5);
    expect(at({ x: null, y: 4 })).toMatchObject({ u95: null, decision: 'cannot say' });
  });

  it('a seat is decided by 3 %', () => {
    const at = (shift: number) => {
      const subject = makeSubject({ radius: shiftedGate(shift), report: { rest: surely } });
      return findSeat(subject, limits)?.decision;
    };
    expect([0.0325, 0.0315, 0.0285, 0.0275].map(at)).toEqual(['fail', 'cannot say', 'cannot say', 'pass']);
  });

  it('a side is known to 0.5 %, and after the mapping of a pad to what its edges may be off', () => {
    const at = (domain: 'sensor' | 'reported') =>
      findShortRange(makeSubject({ radius: shortGate(0.06), subject: { domain } }), limits)?.u95;
    expect(at('sensor')).toBeCloseTo(0.005, 5);
    expect(at('reported')).toBeCloseTo(Math.hypot(0.005, 0.03), 5);
  });

  it('a side is decided by 1.8 %', () => {
    const at = (short: number) => findShortRange(makeSubject({ radius: shortGate(short) }), limits)?.decision;
    expect([0.0235, 0.0225, 0.0135, 0.0125].map(at)).toEqual(['fail', 'cannot say', 'cannot say', 'pass']);
  });

  it('a skew is known to 0.3° and decided by 3.5°', () => {
    const at = (skew: number) => findSkewed(makeSubject({ radius: skewedGate(skew) }), limits);
    expect(at(6)?.u95).toBeCloseTo(0.3, 3);
    expect([3.85, 3.75, 3.25, 3.15].map((skew) => at(skew)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
  });
});
