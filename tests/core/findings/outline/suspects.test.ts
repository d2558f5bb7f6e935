import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { defaultLimits } from '../../../../core/findings/limits.ts';
import { suspectsOf } from '../../../../core/findings/outline/suspects.ts';
import type { PinnedSide } from '../../../../core/findings/pinned-sides.ts';
import type { Subject } from '../../../../core/findings/subject.ts';
import { HALF, makeSubject } from '../make-subject.ts';
import { FAULTY, outlineSeen, posterior, SOUND, spreadOf, type Spread } from '../odd-waves.ts';

type Seen = readonly [number, number, number, number];

const { report } = makeSubject();
/** σ of the mean rest, in half travels. */
const REST = 0.001;
const rest = { ...report.rest!, u95: { x: 2 * REST * HALF, y: 2 * REST * HALF } };
/** As good as a gate without waves, and as noise of 0.2 % and the waves of a moulded gate leave it. */
const SHARP: Spread = { first: 1e-8, side: 1e-8 };
const USUAL = spreadOf(0.002);

function suspects(v: Seen, spread: Spread, subject: Partial<Subject> = {}) {
  const outline = outlineSeen(v, spread);
  return suspectsOf(makeSubject({ report: { rest }, subject: { outline, ...subject } }), defaultLimits)!;
}

/** ln of the odds for a seat against a side of x, by the waves of an ideal gate: v lies along x alone. */
function logOdds(v: readonly [number, number], spread: Spread): number {
  const of = (centre: number, side: number, seen: readonly [number, number]): number =>
    posterior(spread, REST, { centre, side }, seen).logEvidence;
  const seat = of(FAULTY.centre, SOUND.side, v) + of(FAULTY.centre, SOUND.side, [0, 0]);
  const side = of(SOUND.centre, FAULTY.side, v) + of(SOUND.centre, SOUND.side, [0, 0]);
  return seat - side;
}

describe('what an outline is suspected of', () => {
  it('is a seat alone where the outline tells, and the rest is seen from the centre', () => {
    const found = suspects([-0.04, 0.03, 0, 0], SHARP);
    expect(found.seat).toMatchObject({ isFault: true, rival: null, side: 0 });
    expect(found.seat.value).toBeCloseTo(0.05, 4);
    expect(found.seat.shift!.x).toBeCloseTo(0.04, 4);
    expect(found.seat.shift!.y).toBeCloseTo(-0.03, 4);
    expect([found.x.isFault, found.y.isFault]).toEqual([false, false]);
  });

  it('is a side alone where the outline tells: the one that gives less', () => {
    const found = suspects([0, 0, Math.log(0.94), 0], SHARP);
    expect(found.x).toMatchObject({ isFault: true, rival: null, side: 1, shift: null });
    expect(found.x.value).toBeCloseTo(0.06, 4);
    expect(found.x.u95).toBeCloseTo(posterior(SHARP, REST, { ...SOUND, side: FAULTY.side }, [0, 0]).sideU, 9);
    expect([found.seat.isFault, found.y.isFault]).toEqual([false, false]);
    expect(suspects([0, 0, 0, -Math.log(0.94)], SHARP).y).toMatchObject({ isFault: true, side: -1 });
  });

  it('is both where each is beyond its limit beside the other, with the values of both together', () => {
    const found = suspects([0, 0.05, Math.log(0.94), 0], SHARP);
    // The side is the likelier of the two; the seat stands beside it in its own right.
    expect(found.x.isFault).toBe(true);
    expect(found.seat).toMatchObject({ isFault: true, rival: null });
    expect(found.seat.value).toBeCloseTo(0.05, 3);
    expect(found.x.value).toBeCloseTo(0.06, 3);
    expect(found.y.isFault).toBe(false);
  });

  it('names a rival with its odds where waves hide which of the two it is', () => {
    const v = [-0.048, 0, 0, 0] as const;
    const odds = Math.exp(logOdds([-0.048, 0], USUAL));
    expect(odds).toBeGreaterThan(1);
    expect(odds).toBeLessThan(20);
    const found = suspects(v, USUAL);
    expect(found.seat.isFault).toBe(true);
    expect(found.seat.rival).toMatchObject({ is: 'x' });
    expect(found.seat.rival!.odds).toBeCloseTo(odds, 6);
    expect(found.x.isFault).toBe(true);
    expect(found.x.rival).toMatchObject({ is: 'seat' });
    expect(found.x.rival!.odds).toBeCloseTo(1 / odds, 6);
    // Each with what it would be alone.
    expect(found.seat.value).toBeCloseTo(
      Math.abs(posterior(USUAL, REST, { ...SOUND, centre: FAULTY.centre }, [-0.048, 0]).centre),
      9,
    );
    const { side } = posterior(USUAL, REST, { ...SOUND, side: FAULTY.side }, [-0.048, 0]);
    expect(found.x.value).toBeCloseTo(1 - Math.exp(-Math.abs(side)), 9);
  });

  it('does not name the less likely one where the odds are 20 to 1 against it', () => {
    const v = [-0.08, 0, 0, 0] as const;
    const odds = Math.exp(logOdds([-0.08, 0], USUAL));
    expect(odds).toBeGreaterThan(20);
    const found = suspects(v, USUAL);
    expect(found.seat).toMatchObject({ isFault: true, rival: null });
    expect(found.x.isFault).toBe(false);
    expect(found.x.rival!.odds).toBeCloseTo(1 / odds, 9);
    // With what is left to it beside the seat, not with what it would be alone: nothing that is held lies beyond its limit.
    const { side, sideU } = posterior(USUAL, REST, FAULTY, [-0.08, 0]);
    expect(found.x.value).toBeCloseTo(1 - Math.exp(-Math.abs(side)), 9);
    expect(found.x.u95).toBeCloseTo(sideU, 9);
    expect(found.x.value - found.x.u95).toBeLessThan(defaultLimits.shortRange.value);
  });

  it('is nothing within the limits, and where more is hidden than a judgement may leave open', () => {
    const isFault = (v: Seen, spread: Spread): boolean[] =>
      Object.values(suspects(v, spread)).map((one) => one.isFault);
    expect(isFault([-0.017, 0, 0, 0], SHARP)).toEqual([false, false, false]);
    // Not known to 2.5 % of a seat, nor to 5 % of a side.
    expect(isFault([-0.09, 0, -0.2, 0], { first: 0.03 ** 2, side: 0.03 ** 2 })).toEqual([false, false, false]);
  });

  it('does not name an axis that a sensor clips, but one that the pad itself cuts off', () => {
    const pinned: PinnedSide[] = [{ axis: 'x', side: 1, count: 3000, readings: 90, share: 0.9 }];
    const v = [0, 0, Math.log(0.94), 0] as const;
    expect(suspects(v, SHARP, { pinned }).x.isFault).toBe(false);
    expect(suspects(v, SHARP, { pinned, domain: 'reported' }).x.isFault).toBe(true);
  });

  it('is not asked without an outline, a rest, or what the rest is known to', () => {
    const none = (subject: Partial<Subject>, u95: { x: number | null; y: number | null } = rest.u95) =>
      suspectsOf(makeSubject({ report: { rest: { ...rest, u95 } }, subject }), defaultLimits);
    expect(none({ outline: null })).toBeNull();
    expect(none({ aboutRest: false })).toBeNull();
    expect(none({}, { x: null, y: 1 })).toBeNull();
    expect(none({}, { x: 1, y: null })).toBeNull();
    expect(none({})).not.toBeNull();
  });

  it('does not change where x and y are exchanged, nor but for its way where the stick is mirrored', () => {
    const share = fc.double({ min: -0.12, max: 0.12, noNaN: true });
    const sigma = fc.constantFrom(1e-4, 0.001, 0.004);
    const plain = ({ value, u95, isFault }: { value: number; u95: number; isFault: boolean }) => ({
      value: expect.closeTo(value, 8) as number,
      u95: expect.closeTo(u95, 8) as number,
      isFault,
    });
    fc.assert(
      fc.property(share, share, share, share, sigma, (cx, cy, dx, dy, noise) => {
        const spread = spreadOf(noise);
        const one = suspects([cx, cy, dx, dy], spread);
        const turned = suspects([cy, cx, dy, dx], spread);
        expect(one).toMatchObject({ seat: plain(turned.seat), x: plain(turned.y), y: plain(turned.x) });
        const mirrored = suspects([-cx, cy, -dx, dy], spread);
        expect(one).toMatchObject({ seat: plain(mirrored.seat), x: plain(mirrored.x), y: plain(mirrored.y) });
        if (one.x.value > 1e-9) expect(mirrored.x.side).toBe(-one.x.side);
      }),
      { seed: 9, numRuns: 150 },
    );
  });
});
