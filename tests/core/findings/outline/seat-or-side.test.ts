import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitOutline, type Outline } from '../../../../core/findings/outline/fit-outline.ts';
import type { Unknown } from '../../../../core/findings/outline/outline-model.ts';
import { weigh, type Suspect } from '../../../../core/findings/outline/seat-or-side.ts';
import { expectRelative } from '../../../support/expect-close.ts';
import { makeSubject, shiftedGate, shortGate } from '../make-subject.ts';
import { FAULTY, posterior, ROUNDING, SOUND } from '../odd-waves.ts';

const nowhere = { x: 0, y: 0 };

/** An outline whose four numbers are seen at `v`, each on its own with σ. */
function seenAt(v: readonly [number, number, number, number], sigma: number): Outline {
  const value = { lean: 0, bend: 0, corner: 0, rounding: 0, xMinus: 1000, yMinus: 1000 };
  const spans = { xPlus: 1000 * Math.exp(v[2]), yPlus: 1000 * Math.exp(v[3]) };
  const all = { ...value, ...spans, centreX: v[0], centreY: v[1] };
  // Only the plus sides carry what is not known of a difference.
  const scale: Partial<Record<Unknown, number>> = { xPlus: all.xPlus, yPlus: all.yPlus, centreX: 1, centreY: 1 };
  return {
    sides: 0,
    value: all,
    residual: 0,
    points: 72,
    variance: (weights) =>
      (Object.entries(weights) as [Unknown, number][]).reduce(
        (sum, [name, weight]) => sum + (weight * (scale[name] ?? 0) * sigma) ** 2,
        0,
      ),
  };
}

describe('weighing a seat against a side', () => {
  it('shrinks each number that is seen on its own by P/(P + M), its σ to √(PM/(P + M))', () => {
    const found = weigh(seenAt([0.03, -0.02, 0.05, -0.01], 0.01), nowhere, ['seat'])!;
    const shrunk = (v: number, p: number): number => (v * p ** 2) / (p ** 2 + 0.01 ** 2);
    const known = (p: number): number => (p * 0.01) / Math.hypot(p, 0.01);
    const [centre, side] = [FAULTY.centre, SOUND.side];
    expect(found.mean).toEqual(
      [shrunk(0.03, centre), shrunk(-0.02, centre), shrunk(0.05, side), shrunk(-0.01, side)].map(
        (one) => expect.closeTo(one, 12) as number,
      ),
    );
    expect(found.sigma).toEqual([centre, centre, side, side].map((one) => expect.closeTo(known(one), 12) as number));
    const squares = (0.03 ** 2 + 0.02 ** 2) / (centre ** 2 + 1e-4) + (0.05 ** 2 + 0.01 ** 2) / (side ** 2 + 1e-4);
    const det = 2 * Math.log(centre ** 2 + 1e-4) + 2 * Math.log(side ** 2 + 1e-4);
    expect(found.evidence).toBeCloseTo(-(squares + det) / 2, 9);
  });

  it('holds an axis that is suspected wide, and the other one for sound', () => {
    const found = weigh(seenAt([0, 0, 0.05, 0.05], 0.01), nowhere, ['x'])!;
    expect(found.mean[2]).toBeCloseTo((0.05 * 0.12 ** 2) / (0.12 ** 2 + 1e-4), 12);
    expect(found.mean[3]).toBeCloseTo((0.05 * 0.005 ** 2) / (0.005 ** 2 + 1e-4), 12);
    const both = weigh(seenAt([0, 0, 0.05, 0.05], 0.01), nowhere, ['x', 'y'])!;
    expect(both.mean[3]).toBeCloseTo(both.mean[2]!, 12);
  });

  it('adds what is not known of the rest to its own axis of the centre', () => {
    const found = weigh(seenAt([0.03, 0.03, 0, 0], 0.01), { x: 0.02 ** 2, y: 0 }, ['seat'])!;
    expect(found.mean[0]).toBeCloseTo((0.03 * 0.08 ** 2) / (0.08 ** 2 + 0.01 ** 2 + 0.02 ** 2), 12);
    expect(found.mean[1]).toBeCloseTo((0.03 * 0.08 ** 2) / (0.08 ** 2 + 0.01 ** 2), 12);
  });

  it('agrees with the waves of an ideal gate on means, σ and odds', () => {
    for (const [radius, v] of [
      [shiftedGate(0.004), [-0.004, 0]],
      [shortGate(0.01), [0, Math.log(0.99)]],
    ] as const) {
      const outline = makeSubject({ radius }).outline!;
      const rest = { x: 0.004 ** 2, y: 0.004 ** 2 };
      const [seat, x] = (['seat', 'x'] as const).map((one) => weigh(outline, rest, [one])!);
      const bySeat = posterior(ROUNDING, 0.004, { ...SOUND, centre: FAULTY.centre }, v);
      const bySide = posterior(ROUNDING, 0.004, { ...SOUND, side: FAULTY.side }, v);
      expect(seat!.mean[0]).toBeCloseTo(bySeat.centre, 4);
      expectRelative(2 * seat!.sigma[0]!, bySeat.centreU, 0.01);
      expect(x!.mean[2]).toBeCloseTo(bySide.side, 4);
      expectRelative(2 * x!.sigma[2]!, bySide.sideU, 0.01);
      // A seat that may be tilted may be so along y, too, a side of x only along x: y, where nothing is, costs it
      // ½·ln of what its variance grows by, and that of y's sides is the same of both.
      const [free, held] = (
        [
          [FAULTY.centre, 0],
          [SOUND.centre, 0],
        ] as const
      ).map(([centre]) => posterior(ROUNDING, 0.004, { ...SOUND, centre }, [0, 0]).logEvidence);
      expect(seat!.evidence - x!.evidence).toBeCloseTo(bySeat.logEvidence + free! - bySide.logEvidence - held!, 1);
    }
  });

  it('turns with the axes: where x and y are exchanged, so is everything that is found', () => {
    const share = fc.double({ min: -0.1, max: 0.1, noNaN: true });
    const suspected = fc.subarray<Suspect>(['seat', 'x', 'y']);
    const exchanged: Readonly<Record<Suspect, Suspect>> = { seat: 'seat', x: 'y', y: 'x' };
    fc.assert(
      fc.property(fc.tuple(share, share, share, share), suspected, (v, suspects) => {
        const one = weigh(seenAt(v, 0.004), { x: 1e-6, y: 4e-6 }, suspects)!;
        const turned = weigh(
          seenAt([v[1], v[0], v[3], v[2]], 0.004),
          { x: 4e-6, y: 1e-6 },
          suspects.map((suspect) => exchanged[suspect]),
        )!;
        const [cx, cy, dx, dy] = turned.mean;
        expect(one.mean).toEqual([cy, cx, dy, dx].map((number) => expect.closeTo(number!, 9) as number));
        expect(one.evidence).toBeCloseTo(turned.evidence, 6);
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it('is null where the covariance is none', () => {
    const outline = fitOutline(
      Array.from({ length: 72 }, (_, i) => {
        const turn = (i * Math.PI) / 36;
        return { angle: 5 * i, dx: 1000 * Math.cos(turn), dy: 1000 * Math.sin(turn) };
      }),
    )!;
    expect(weigh({ ...outline, variance: () => Number.NaN }, nowhere, ['seat'])).toBeNull();
  });
});
