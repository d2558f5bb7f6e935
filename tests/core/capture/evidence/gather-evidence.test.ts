import { describe, expect, it } from 'vitest';
import type { StickEvidence } from '../../../../core/capture/evidence/evidence.ts';
import { gatherEvidence } from '../../../../core/capture/evidence/gather-evidence.ts';
import { eightBits, HandScript, trackOf, twelveBits, type StickPlan } from '../guide/hand-script.ts';

const left = { stick: 'left' };

function eight(plan: Partial<StickPlan> = {}): HandScript {
  return new HandScript({ fields: eightBits, rest: { x: 128, y: 127 }, gate: () => 120, ...plan });
}

function twelve(plan: Partial<StickPlan> = {}): HandScript {
  return new HandScript({ fields: twelveBits, rest: { x: 2048, y: 2048 }, gate: () => 1500, noise: 1, ...plan });
}

function evidence(hand: HandScript): StickEvidence {
  return gatherEvidence(hand.track, 'left');
}

function codes({ lacks = [] }: StickEvidence): string[] {
  return lacks.map(({ code }) => code);
}

function points({ rest }: StickEvidence): number[][] {
  return (rest?.dwells ?? []).map(({ point }) => [Math.round(point.x), Math.round(point.y)]);
}

describe('gatherEvidence without marks', () => {
  it('takes still spans that follow a push and a return for releases', () => {
    const hand = twelve().stay(1);
    for (const angle of [0, 90, 180, 270])
      hand
        .push(angle)
        .stay(0.2)
        .letGo({ x: angle / 10, y: 5 })
        .stay(1);
    const found = evidence(hand);
    expect(found.captures).toBe('inferred');
    expect(points(found)).toEqual([
      [2048, 2043],
      [2057, 2043],
      [2066, 2043],
      [2075, 2043],
    ]);
    expect(found.still).toHaveLength(1);
    const angles = found.rest?.dwells.map(({ from }) => (Math.atan2(from?.y ?? 0, from?.x ?? 0) * 180) / Math.PI);
    [0, 90, 180, 270].forEach((angle, i) =>
      expect(Math.cos(((angle - (angles?.[i] ?? 0)) * Math.PI) / 180)).toBeGreaterThan(0.999),
    );
  });

  it('says of a stick that never moved where it stood, and that it was never pushed', () => {
    const found = evidence(eight().stay(5));
    expect(found).toMatchObject({ rest: null, rim: null, captures: 'inferred' });
    expect(found.still?.map(({ point }) => point)).toEqual([{ x: 128, y: 127 }]);
    expect(codes(found)).toEqual(['stick-never-moved']);
  });

  it('takes noise below the step for what it is: a dwell of one reading', () => {
    const hand = eight({ intervalUs: 1000, noise: 0.4 }).stay(3).push(0).stay(0.2).letGo().stay(3);
    const [dwell] = evidence(hand).rest?.dwells ?? [];
    expect(dwell?.readings).toEqual([128, 127]);
    expect(dwell?.variance).toEqual({ x: 0, y: 0 });
    expect(dwell?.reports).toBeGreaterThan(2000);
  });

  it('does not take a still span while a button is down for a release, though it is the longest', () => {
    const hand = eight().stay(1).push(0).stay(0.2).letGo().stay(0.9);
    hand.press(true).push(300, 0.12, 0.05).stay(6).press(false).letGo().stay(0.3).push(90).stay(0.2).letGo().stay(1);
    const found = evidence(hand);
    expect(points(found)).toEqual([
      [128, 127],
      [128, 127],
    ]);
  });

  it('does not take a stick held at the gate or at a tilt for a release, nor a log that ends deflected', () => {
    const hand = twelve().stay(1).push(30).stay(0.2).letGo().stay(1).push(200).stay(2).letGo().stay(1);
    hand.push(90, 0.08).stay(2).letGo().stay(1).push(0, 0.7).stay(3);
    expect(points(evidence(hand))).toEqual([
      [2048, 2048],
      [2048, 2048],
    ]);
  });

  it('takes a log that only shows a held stick for none at rest', () => {
    const found = evidence(twelve().push(0, 0.2).push(45, 1, 0.3).stay(3));
    expect(found.rest).toBeNull();
    expect(found.still).toEqual([]);
    expect(codes(found)).toEqual(['no-release', 'no-turn']);
  });

  it('begins deflected and still finds the rest', () => {
    const hand = eight({ onChange: true })
      .push(90, 1, 0.02)
      .stay(1.5)
      .letGo()
      .stay(0.2)
      .push(40)
      .stay(0.1)
      .letGo()
      .stay(2)
      .mark('note');
    expect(points(evidence(hand))).toEqual([[128, 127]]);
  });

  it('weighs a pad that reports only changes by time', () => {
    const hand = eight({ onChange: true }).stay(1).push(0).stay(0.1).letGo({ x: 3, y: 0 }, 0.1).stay(0.02);
    hand.letGo({ x: 2, y: 0 }, 0.02).stay(4).mark('note');
    const [dwell] = evidence(hand).rest?.dwells ?? [];
    expect(dwell?.point.x).toBeCloseTo(130, 1);
    expect(dwell?.variance).toBeNull();
  });

  it('does not take a rest that steps aside by itself for a release, and says so', () => {
    const found = evidence(eight().stay(1.2).letGo({ x: -5, y: 0 }, 0.02).stay(1.8));
    expect(found.rest).toBeNull();
    expect(found.still?.map(({ point }) => Math.round(point.x))).toEqual([128, 123]);
    expect(codes(found)).toEqual(['stick-never-moved', 'rest-shifted']);
  });

  it('keeps a rest far off the middle of the field', () => {
    const hand = eight({ rest: { x: 175, y: 90 }, gate: () => 75 })
      .stay(1)
      .push(45)
      .stay(0.2)
      .letGo()
      .stay(1);
    hand.push(225).stay(0.2).letGo().stay(1);
    expect(points(evidence(hand))).toEqual([
      [175, 90],
      [175, 90],
    ]);
  });

  it('finds whole turns along a gate clipped at the limits, about the rest the log begins with', () => {
    const hand = eight({ rest: { x: 131, y: 128 }, gate: () => 145 })
      .stay(1)
      .push(180)
      .turn(3 * 360 + 20)
      .turn(-2 * 360 - 290);
    const found = evidence(hand);
    expect(found.rim?.turns.map(({ way }) => way)).toEqual([
      'counterClockwise',
      'counterClockwise',
      'counterClockwise',
      'clockwise',
      'clockwise',
    ]);
    expect(found.rim?.about).toEqual({ x: 131, y: 128 });
    expect(codes(found)).toEqual(['no-release']);
  });

  it('takes circles well inside the field for no turns, and an arc for none', () => {
    expect(
      evidence(
        twelve()
          .stay(1)
          .push(0, 0.2)
          .turn(1080, 1, () => 0.2)
          .letGo()
          .stay(1),
      ).rim,
    ).toBeNull();
    expect(evidence(twelve().stay(1).push(0).turn(300).letGo().stay(1)).rim).toBeNull();
  });

  it('takes directions about the middle of the extents where the rest is not known', () => {
    const hand = new HandScript({ fields: twelveBits, rest: { x: 2300, y: 1900 }, gate: () => 1500, seed: 4 });
    hand.push(0, 0.9, 0.01).turn(1200);
    const { rim } = evidence(hand);
    expect(rim?.about.x).toBeCloseTo(2300, -1);
    expect(rim?.about.y).toBeCloseTo(1900, -1);
  });

  it('does not see through a gap: what the stick did in it is not known', () => {
    const hand = twelve().stay(1).push(0).stay(0.2).letGo().stay(0.4).lose(0.3).stay(0.4);
    expect(evidence(hand).rest).toBeNull();
    expect(evidence(twelve().push(0).turn(300).lose(0.5).turn(300).letGo()).rim).toBeNull();
    expect(evidence(twelve().stay(1).push(0).stay(0.2).letGo().stay(0.4).lose(0.01).stay(0.6)).rest).not.toBeNull();
  });

  it('takes releases marked without a capture at their word, and finds turns all the same', () => {
    const hand = twelve().stay(1).push(0).stay(0.3).letGo().stay(1);
    for (const angle of [0, 120, 240]) hand.push(angle).stay(0.3).mark('release', left).letGo().stay(1.2);
    const found = evidence(hand.push(0).turn(800).letGo().stay(1));
    expect(found.captures).toBe('inferred');
    expect(found.rest?.dwells).toHaveLength(3);
    expect(found.rim?.turns).toHaveLength(2);
  });

  it('is evidence of nothing for a stick that the pad does not have, and says so', () => {
    const found = gatherEvidence(eight().stay(1).track, 'right');
    expect(found).toMatchObject({ rest: null, rim: null });
    expect(found.lacks?.[0]?.says).toBe('The pad has no right stick.');
  });

  it('says of an empty log that it is empty', () => {
    const track = trackOf({ left: eight().stick });
    expect(codes(gatherEvidence(track, 'left'))).toEqual(['log-without-reports']);
  });
});
