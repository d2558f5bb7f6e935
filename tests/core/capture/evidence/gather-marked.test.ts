import { describe, expect, it } from 'vitest';
import type { StickEvidence } from '../../../../core/capture/evidence/evidence.ts';
import { gatherEvidence } from '../../../../core/capture/evidence/gather-evidence.ts';
import { HandScript, twelveBits } from '../guide/hand-script.ts';

const left = { stick: 'left' };

function twelve(): HandScript {
  return new HandScript({ fields: twelveBits, rest: { x: 2048, y: 2048 }, gate: () => 1500, noise: 1 });
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

describe('gatherEvidence with marks', () => {
  const begin = { purpose: 'rest', stick: 'left', edge: 'begin' };
  const end = { ...begin, edge: 'end' };

  function releases(hand: HandScript, angles: readonly number[], rest = (i: number) => ({ x: i, y: 0 })): HandScript {
    hand.stay(0.5).mark('capture', begin);
    angles.forEach((angle, i) => hand.push(angle).stay(0.3).mark('release', left).letGo(rest(i)).stay(1.2));
    return hand;
  }

  it('takes the first settled half second after each release', () => {
    const found = evidence(releases(twelve(), [0, 90, 180, 270]).mark('capture', end).push(20).stay(1).letGo().stay(2));
    expect(found.captures).toBe('marked');
    expect(points(found)).toEqual([
      [2048, 2048],
      [2049, 2048],
      [2050, 2048],
      [2051, 2048],
    ]);
  });

  it('keeps a single release and has nothing to say of the rim', () => {
    const found = evidence(releases(twelve(), [0]).mark('capture', end));
    expect(found.rest?.dwells).toHaveLength(1);
    expect(codes(found)).toEqual(['no-turn']);
  });

  it('keeps an outlying release: a stick that hangs is a finding', () => {
    const found = evidence(releases(twelve(), [0, 90, 180, 270], (i) => ({ x: i === 2 ? 350 : 0, y: 0 })));
    expect(points(found)[2]).toEqual([2398, 2048]);
  });

  it('takes neither a stick that is still held after the mark nor the next push for the release', () => {
    const hand = twelve().stay(0.5).mark('capture', begin);
    for (const angle of [0, 120, 240])
      hand
        .push(angle)
        .mark('release', left)
        .stay(1)
        .letGo()
        .stay(angle === 120 ? 0.3 : 1.2)
        .push(angle + 120)
        .stay(1);
    const found = evidence(hand.letGo().mark('capture', end));
    expect(points(found)).toEqual([
      [2048, 2048],
      [2048, 2048],
    ]);
  });

  it('takes what the marked dwells say where there are any', () => {
    const hand = twelve().stay(0.5).mark('capture', begin).push(0).stay(0.3).mark('release', left).letGo().stay(0.3);
    hand
      .mark('dwell', { ...left, edge: 'begin' })
      .stay(0.5)
      .mark('dwell', { ...left, edge: 'end' });
    hand.push(90).stay(0.3).mark('release', left).letGo().stay(2);
    const found = evidence(hand.mark('capture', end));
    expect(found.rest?.dwells.map(({ startUs, endUs }) => endUs - startUs)).toEqual([500_000]);
  });

  it('counts no marked dwell in which a button was down', () => {
    const hand = twelve().stay(0.5).mark('capture', begin).push(0).stay(0.3).mark('release', left).letGo().stay(0.3);
    hand
      .mark('dwell', { ...left, edge: 'begin' })
      .stay(0.2)
      .press(true)
      .stay(0.1)
      .press(false)
      .stay(0.2);
    expect(evidence(hand.mark('dwell', { ...left, edge: 'end' })).rest).toBeNull();
  });

  it('drops the release that the hand asked to repeat', () => {
    const hand = releases(twelve(), [0, 90]).mark('repeat', { ...left, of: 'release' });
    hand.push(90).stay(0.3).mark('release', left).letGo({ x: 9, y: 0 }).stay(1.2);
    expect(points(evidence(hand.mark('capture', end)))).toEqual([
      [2048, 2048],
      [2057, 2048],
    ]);
  });

  it('drops the turn that the hand asked to repeat, and counts turns within the capture only', () => {
    const rim = { purpose: 'rim', stick: 'left', edge: 'begin' };
    const hand = releases(twelve(), [0]).mark('capture', end).push(0).turn(800).letGo().stay(0.3).mark('capture', rim);
    hand
      .push(0)
      .turn(2 * 360 + 100)
      .mark('repeat', { ...left, of: 'turn' })
      .turn(400)
      .letGo()
      .mark('capture', { ...rim, edge: 'end' });
    expect(evidence(hand.push(0).turn(800)).rim?.turns).toHaveLength(2);
  });

  it('keeps what was taken of a log that was cut off', () => {
    const whole = releases(twelve(), [0, 90, 180]);
    const cut = { ...whole.track, marks: whole.marks };
    expect(gatherEvidence(cut, 'left').rest?.dwells).toHaveLength(3);
  });

  it('says that a capture holds no turn', () => {
    const hand = releases(twelve(), [0])
      .mark('capture', end)
      .mark('capture', { purpose: 'rim', stick: 'left', edge: 'begin' });
    const found = evidence(hand.push(0).turn(200).letGo());
    expect(found.rim).toBeNull();
    expect(codes(found)).toEqual(['no-turn']);
  });
});
