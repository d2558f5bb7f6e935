import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SignalLoss } from '../../../core/capture/evidence/signal-losses.ts';
import { lossesOnWorn, lossPlace } from '../../../core/findings/loss-place.ts';
import { lossAt, lossToward } from './make-loss.ts';
import { HALF, makeSubject, makeTravel, REST, soundTravel } from './make-subject.ts';

const placeOf = (losses: readonly SignalLoss[]) => lossPlace(makeSubject({ subject: { losses } }));
const toward = (...degrees: readonly number[]) => degrees.map((angle, i) => lossToward(angle, i));

describe('the place of losses', () => {
  it('is a sector of the gate that six of ten lie in, and how many times they were passed there', () => {
    expect(placeOf(toward(30, 60, 90))).toEqual({ kind: 'directions', from: 30, to: 90, within: 3, turns: 3 });
    expect(placeOf(toward(30, 60, 90, 200, 280))).toMatchObject({ kind: 'directions', from: 30, to: 90, within: 3 });
    expect(placeOf(toward(30, 60, 90, 150, 210, 280))).toBeNull();
    expect(placeOf(toward(30, 60))).toBeNull();
  });

  it('counts a contact that chatters once in half a second', () => {
    const chatter = [0, 0.1, 0.2, 0.9, 3].map((seconds, i) => lossToward(30 + 15 * i, seconds));
    expect(placeOf(chatter)).toMatchObject({ kind: 'directions', within: 5, turns: 3 });
  });

  it('goes on over 0°', () => {
    expect(placeOf(toward(320, 345, 30))).toMatchObject({ kind: 'directions', from: 320, to: 390, within: 3 });
  });

  it('is no sector wider than 75°, nor one inside of the gate', () => {
    expect(placeOf(toward(20, 58, 95))).toMatchObject({ kind: 'directions', within: 3 });
    expect(placeOf(toward(20, 58, 96))).toBeNull();
    const inside = [20, 50, 80].map((angle, i) => lossToward(angle, i, 0.69));
    expect(placeOf(inside)).toBeNull();
    expect(placeOf([20, 50, 80].map((angle, i) => lossToward(angle, i, 0.71)))?.kind).toBe('directions');
  });

  it('is a stretch of counts of one axis, no wider than 8 % of its travel', () => {
    const at = (...xs: readonly number[]) => xs.map((x, i) => lossAt({ x, y: 0.3 * (i - 1) }, i));
    expect(placeOf(at(0.3, 0.35, 0.4))).toEqual({
      kind: 'counts',
      axis: 'x',
      from: REST.x + 0.3 * HALF,
      to: REST.x + 0.4 * HALF,
      within: 3,
    });
    expect(placeOf(at(0.3, 0.38, 0.459))).toMatchObject({ kind: 'counts', axis: 'x' });
    expect(placeOf(at(0.3, 0.38, 0.461))).toBeNull();
    expect(placeOf([0.1, 0.4, -0.3].map((x, i) => lossAt({ x, y: -0.2 }, i)))).toMatchObject({
      kind: 'counts',
      axis: 'y',
      from: REST.y - 0.2 * HALF,
    });
  });

  it('is the stretch of an axis where both explain as many, and the middle of where a long one began and ended', () => {
    const same = toward(0, 3, 6);
    expect(placeOf(same)?.kind).toBe('counts');
    const moved = same.map((loss, i) => ({ ...loss, after: { x: loss.after.x, y: loss.after.y + 400 * i } }));
    expect(placeOf(moved)).toMatchObject({ kind: 'counts', axis: 'x' });
  });

  it('is nowhere without a rest', () => {
    const losses = toward(30, 60, 90);
    expect(lossPlace(makeSubject({ releases: 0, subject: { losses } }))).toBeNull();
  });

  it('turns with the stick and does not depend on the order of the losses', () => {
    const angle = fc.integer({ min: 0, max: 359 });
    fc.assert(
      fc.property(fc.array(angle, { minLength: 3, maxLength: 12 }), (angles) => {
        const found = placeOf(toward(...angles));
        const losses = toward(...angles);
        expect(placeOf(losses.toReversed())).toEqual(found);
        // A quarter turn exchanges the axes and carries directions on by 90°.
        const turned = placeOf(losses.map((loss) => quarter(loss)));
        expect(turned?.kind).toBe(found?.kind);
        expect(turned?.within).toBe(found?.within);
      }),
      { seed: 41, numRuns: 200 },
    );
  });
});

function quarter(loss: SignalLoss): SignalLoss {
  const turned = { x: REST.x - (loss.before.y - REST.y), y: REST.y + (loss.before.x - REST.x) };
  return { ...loss, before: turned, after: turned };
}

describe('losses on a worn track', () => {
  const share = (losses: readonly SignalLoss[], from = 2500, to = 2600) =>
    lossesOnWorn(
      makeSubject({
        report: { travel: makeTravel({ x: { ...soundTravel, unsteady: [{ from, to, times: 9 }] }, y: null }) },
        subject: { losses },
      }),
    );
  const atCount = (before: number, after = before): SignalLoss => ({
    ...lossAt({ x: 0, y: 0.5 }, 1),
    before: { x: before, y: 2700 },
    after: { x: after, y: 2700 },
  });

  it('are those on an unsteady stretch, within 2 % of the half travel of it, or across it', () => {
    // 0.02 · 1250 = 25 counts.
    expect(share([atCount(2475), atCount(2474), atCount(2625), atCount(2626)])).toBe(0.5);
    expect(share([atCount(2300, 2900), atCount(2900, 2300), atCount(2300)])).toBeCloseTo(2 / 3, 12);
  });

  it('are none without losses, without sweeps, or where no track is unsteady', () => {
    expect(share([])).toBe(0);
    expect(lossesOnWorn(makeSubject({ subject: { losses: [atCount(2550)] } }))).toBe(0);
    const sparse = makeTravel({ x: { ...soundTravel, unsteady: null } });
    expect(lossesOnWorn(makeSubject({ report: { travel: sparse }, subject: { losses: [atCount(2550)] } }))).toBe(0);
  });
});
