/** What a sound gate may pretend stands in the uncertainty of every finding that is taken from its outline. */
import { describe, expect, it } from 'vitest';
import { findSeat } from '../../../core/findings/find-seat.ts';
import { findShortRange } from '../../../core/findings/find-short-range.ts';
import { findSkewed } from '../../../core/findings/find-skewed.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { expectRelative } from '../../support/expect-close.ts';
import { HALF, makeSubject, shiftedGate, shortGate, skewedGate } from './make-subject.ts';
import { FAULTY, posterior, ROUNDING, SOUND } from './odd-waves.ts';

const limits = defaultLimits;
const { rest } = makeSubject().report;
const surely = { ...rest!, u95: { x: 0, y: 0 } };

/**
 * Off the middle by c a bend β, which the fourth wave of the gate (σ 0.3 %) hides up to σ = 4 · 0.3 %, moves the first wave by
 * 1.5·c·β, and the second wave by c · 0.3 %: 2 · c · 0.003 · √(6² + 1).
 */
const offMiddle = (shift: number): number => 2 * shift * 0.003 * Math.sqrt(37);
const seatU = (shift: number, restSigma: number): number =>
  Math.hypot(posterior(ROUNDING, restSigma, { ...SOUND, centre: FAULTY.centre }, [0, 0]).centreU, offMiddle(shift));

describe('of an outline that fits to rounding', () => {
  it('a seat is known to what the waves of a gate hide, and to what the rest is known', () => {
    const at = (shift: number, u95: { x: number | null; y: number | null }) =>
      findSeat(makeSubject({ radius: shiftedGate(shift), report: { rest: { ...rest!, u95 } } }), limits);
    expectRelative(at(0.001, { x: 0, y: 0 })?.u95 ?? undefined, seatU(0.001, 0), 0.03);
    expectRelative(at(0.05, { x: 0, y: 0 })?.u95 ?? undefined, seatU(0.05, 0), 0.03);
    // The shift goes along x: only what is not known of x counts.
    expectRelative(at(0.05, { x: 3, y: 400 })?.u95 ?? undefined, seatU(0.05, 1.5 / HALF), 0.03);
    expect(at(0.05, { x: null, y: 4 })).toBeNull();
    expect(at(0.05, { x: 4, y: null })).toBeNull();
  });

  it('a seat is proven beyond 1.8 % and its uncertainty, and passes below', () => {
    const at = (shift: number) =>
      findSeat(makeSubject({ radius: shiftedGate(shift), report: { rest: surely } }), limits)?.decision;
    const proven = limits.seat.value + seatU(limits.seat.value, 0);
    expect([proven + 1e-4, proven - 1e-4, limits.seat.value, 0.005].map(at)).toEqual(['fail', 'pass', 'pass', 'pass']);
  });

  it('a seat cannot be judged where more than 2.5 % of it is hidden, and passes at any value where it is not', () => {
    // A fault may be 8 % (σ); U = 2·√(P·M/(P + M)) is 2.5 % at M = 0.0126614².
    const at = (sigma: number) => {
      const u95 = { x: 2 * sigma * HALF, y: 2 * sigma * HALF };
      return findSeat(makeSubject({ radius: shiftedGate(0.001), report: { rest: { ...rest!, u95 } } }), limits);
    };
    expect(at(0.0126)?.decision).toBe('pass');
    expect(at(0.0126)?.u95).toBeCloseTo(0.0249, 4);
    expect(at(0.0127)?.decision).toBe('cannot say');
    expect(at(0.0126)?.says).toContain('no tilted seat is seen; finer than 2.5 % the gate hides.');
    expect(at(0.005)?.says).toMatch(/no tilted seat is seen\.$/);
  });

  it('a side is known to 0.15 %, as only waves beyond the eighth tell it from a wave of the gate', () => {
    const at = (short: number) => findShortRange(makeSubject({ radius: shortGate(short) }), limits)?.u95;
    const { sideU } = posterior(ROUNDING, 0, { ...SOUND, side: FAULTY.side }, [0, 0]);
    expectRelative(at(0.001) ?? undefined, sideU, 0.01);
    expectRelative(at(0.06) ?? undefined, sideU, 0.02);
  });

  it('a side is proven beyond 1.2 % and its uncertainty, after the mapping of a pad beyond 4.2 %', () => {
    const at = (short: number, domain: 'sensor' | 'reported' = 'sensor') =>
      findShortRange(makeSubject({ radius: shortGate(short), subject: { domain } }), limits);
    const { sideU } = posterior(ROUNDING, 0, { ...SOUND, side: FAULTY.side }, [0, 0]);
    const [proven, reported] = [0.012 + sideU, 0.042 + sideU];
    const sensor = [proven + 1e-4, proven - 1e-4, 0.012, 0].map((short) => at(short)?.decision);
    expect(sensor).toEqual(['fail', 'pass', 'pass', 'pass']);
    expect([reported + 1e-4, reported - 1e-4].map((short) => at(short, 'reported')?.decision)).toEqual([
      'fail',
      'pass',
    ]);
    expect(at(0, 'reported')?.limit).toBeCloseTo(0.042, 12);
    expect(at(0)?.limit).toBe(0.012);
  });

  it('a skew is known to what a gate that is a little oval can pretend, and decided by 3.5°', () => {
    const at = (skew: number) => findSkewed(makeSubject({ radius: skewedGate(skew) }), limits);
    // Of the skew 2·atan(a) the second wave hides a up to σ = 0.3 %: U = 2 · 2 · 0.003.
    expect(at(0)?.u95).toBeCloseTo((4 * 0.003 * 180) / Math.PI, 5);
    // A bend that the fourth wave hides adds 4·a times as much.
    const lean = Math.tan((6 * Math.PI) / 360);
    const wider = (1 - lean ** 2) * Math.hypot(1, 4 * lean);
    expect(at(6)?.u95).toBeCloseTo((wider * 4 * 0.003 * 180) / Math.PI, 3);
    expect([4.2, 4.19, 2.82, 2.8].map((skew) => at(skew)?.decision)).toEqual([
      'fail',
      'cannot say',
      'cannot say',
      'pass',
    ]);
  });
});
