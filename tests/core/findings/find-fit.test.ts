/** Findings on how a part sits and what its sensors make of the gate: pass, fail, cannot say, and evidence that is too thin. */
import { describe, expect, it } from 'vitest';
import { findClipped } from '../../../core/findings/find-clipped.ts';
import { findOffCentre } from '../../../core/findings/find-off-centre.ts';
import { findSeat } from '../../../core/findings/find-seat.ts';
import { findShortRange } from '../../../core/findings/find-short-range.ts';
import { findSkewed } from '../../../core/findings/find-skewed.ts';
import { findTurned } from '../../../core/findings/find-turned.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import type { PinnedSide } from '../../../core/findings/pinned-sides.ts';
import { HALF, makeSubject, makeTravel, REST, shiftedGate, shortGate, skewedGate } from './make-subject.ts';
import { FAULTY, posterior, ROUNDING, SOUND } from './odd-waves.ts';

const limits = defaultLimits;
/** Half of a gate. */
const half = (degrees: number): number | null => (degrees <= 180 ? 1 : null);

describe('off-centre part', () => {
  const at = (shift: number, wish = {}) =>
    findOffCentre(makeSubject({ rest: { x: REST.x + shift * HALF, y: REST.y }, ...wish }), limits);

  it('fails where rest and gate stand off the middle together, and says by how much and which way', () => {
    const found = at(0.06)!;
    expect(found.decision).toBe('fail');
    expect(found.value).toBeCloseTo(0.06, 2);
    expect(found.says).toContain('right');
    expect(found.for.join()).toContain('agree');
    expect(found.causes.length).toBeGreaterThan(0);
  });

  it('passes near the middle and cannot say at the limit', () => {
    expect(at(0.01)).toMatchObject({ decision: 'pass', severity: 'note', causes: [] });
    expect(at(limits.offCentre.value)?.decision).toBe('cannot say');
    expect(at(0.06, { releases: 1 })?.decision).toBe('cannot say');
  });

  it('is absent without releases', () => {
    expect(at(0.06, { releases: 0 })).toBeNull();
  });
});

describe('seat not flat', () => {
  const at = (shift: number, wish = {}) => findSeat(makeSubject({ radius: shiftedGate(shift), ...wish }), limits);

  it('fails where the rest is off the centre of its gate', () => {
    const found = at(0.06)!;
    expect(found.decision).toBe('fail');
    expect(found.value).toBeCloseTo(0.06, 4);
    expect(found.next).toContain('iron');
    expect(found.shows.directions).toContain(0);
  });

  it('passes in the middle and where no tilt is proven, and is not moved by a side that reads short', () => {
    expect(at(0.005)).toMatchObject({ decision: 'pass', causes: [], next: 'Nothing to do.' });
    expect(at(limits.seat.value)?.decision).toBe('pass');
    const short = findSeat(makeSubject({ radius: shortGate(0.1) }), limits)!;
    expect(short.decision).toBe('pass');
    // What a sound side of 0.5 % does not take up of a side of 10 % is taken for a seat.
    const { centre } = posterior(ROUNDING, 0, { ...SOUND, centre: FAULTY.centre }, [0, Math.log(0.9)]);
    expect(short.value).toBeCloseTo(Math.abs(centre), 4);
  });

  it('is absent for half a gate, without a rim and without a rest', () => {
    expect(at(0, { radius: half })).toBeNull();
    expect(at(0, { radius: null })).toBeNull();
    expect(at(0.06, { releases: 0 })).toBeNull();
  });
});

describe('short range', () => {
  const at = (short: number) => findShortRange(makeSubject({ radius: shortGate(short) }), limits);

  it('fails for the side that gives less, with its directions', () => {
    const found = at(0.06)!;
    expect(found.decision).toBe('fail');
    expect(found.value).toBeCloseTo(0.06, 4);
    expect(found.says).toContain('right');
    expect(found.shows.directions).toContain(0);
    expect(found.shows.directions).not.toContain(180);
  });

  it('passes where all sides agree or none is proven short, and is not misled by a tilted seat', () => {
    expect(at(0)).toMatchObject({ decision: 'pass', causes: [] });
    expect(at(0)?.value).toBeCloseTo(0, 9);
    expect(at(limits.shortRange.value)?.decision).toBe('pass');
    expect(findShortRange(makeSubject({ radius: shiftedGate(0.1) }), limits)?.decision).toBe('pass');
  });

  it('is absent for half a gate', () => {
    expect(findShortRange(makeSubject({ radius: half }), limits)).toBeNull();
  });
});

describe('skewed part', () => {
  const at = (skew: number) => findSkewed(makeSubject({ radius: skewedGate(skew) }), limits);

  it('fails, passes and cannot say by the angle between the axes', () => {
    const found = at(6)!;
    expect(found.decision).toBe('fail');
    expect(found.value).toBeCloseTo(6, 3);
    expect(found.shows.directions).toEqual([45, 225]);
    expect(at(-6)?.shows.directions).toEqual([135, 315]);
    expect(at(1)?.decision).toBe('pass');
    expect(at(limits.skew.value)?.decision).toBe('cannot say');
    expect(findSkewed(makeSubject({ radius: half }), limits)).toBeNull();
  });
});

describe('turned part', () => {
  const at = (turnAngle: number | null, turnU95: number | null = 2.5) =>
    findTurned(makeSubject({ report: { travel: makeTravel({ turnAngle, turnU95 }) } }), limits);

  it('fails beyond the hand, passes within, and cannot say where the hand might be it', () => {
    expect(at(11)?.decision).toBe('fail');
    expect(at(-11)?.says).toContain('clockwise');
    expect(at(1)?.decision).toBe('pass');
    expect(at(5)?.decision).toBe('cannot say');
    expect(at(11, null)?.decision).toBe('cannot say');
  });

  it('takes the corners of an eight-sided gate where nothing was prompted, and a round gate shows nothing', () => {
    const corners = (turn: number) => (degrees: number) => {
      const from = ((((degrees + turn) % 45) + 45) % 45) - 22.5;
      return Math.cos(Math.PI / 8) / Math.cos((from * Math.PI) / 180);
    };
    const found = findTurned(makeSubject({ radius: corners(9) }), limits)!;
    expect(found.decision).toBe('fail');
    expect(found.value).toBeCloseTo(9, 2);
    expect(findTurned(makeSubject({ radius: corners(1) }), limits)?.decision).toBe('pass');
    expect(findTurned(makeSubject(), limits)).toBeNull();
  });

  it('says nothing of a stick whose axes are swapped or inverted', () => {
    const prompted = { prompts: 24, astray: 1, wiring: 'swapped', agreement: 0.99, turn: 0, turnU95: 1 } as const;
    const subject = makeSubject({ report: { travel: makeTravel({ turnAngle: 20 }) }, subject: { prompted } });
    expect(findTurned(subject, limits)).toBeNull();
  });
});

describe('clipped sensor', () => {
  const pinned = (cut: number): PinnedSide[] => [
    { axis: 'x', side: 1, count: REST.x + (1 - cut) * HALF, readings: 90, share: 0.9 },
  ];
  const at = (cut: number, subject = {}) =>
    findClipped(makeSubject({ subject: { pinned: pinned(cut), ...subject } }), limits);

  it('fails where readings pile up well before the gate, with the count and its directions', () => {
    const found = at(0.04)!;
    expect(found.decision).toBe('fail');
    expect(found.value).toBeCloseTo(0.04, 4);
    expect(found.shows.counts).toEqual([{ axis: 'x', from: REST.x + 0.96 * HALF, to: REST.x + 0.96 * HALF }]);
    expect(found.shows.directions).toContain(0);
  });

  it('passes where nothing piles up, and cannot say without an outline', () => {
    expect(findClipped(makeSubject(), limits)?.decision).toBe('pass');
    expect(at(0.04, { outline: null })).toMatchObject({ decision: 'cannot say', value: null });
  });

  it("is not concluded after the pad's own mapping", () => {
    expect(at(0.04, { domain: 'reported' })).toBeNull();
  });
});
