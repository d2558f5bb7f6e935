import { describe, expect, it } from 'vitest';
import { findCaptures, lastUs } from '../../../../core/capture/evidence/find-captures.ts';
import { eightBits, HandScript } from '../guide/hand-script.ts';

function script(): HandScript {
  return new HandScript({ fields: eightBits, rest: { x: 128, y: 127 }, gate: () => 100, intervalUs: 10_000 });
}

describe('findCaptures', () => {
  it('takes captures from their marks, with indices into the readings', () => {
    const hand = script().stay(1).mark('capture', { purpose: 'rest', stick: 'left', edge: 'begin' }).stay(2);
    hand.mark('capture', { purpose: 'rest', stick: 'left', edge: 'end' }).stay(1);
    expect(findCaptures(hand.track, 'left')).toEqual({
      from: 'marked',
      captures: [{ purpose: 'rest', stick: 'left', startUs: 1_000_000, endUs: 3_000_000, from: 99, to: 300 }],
    });
    expect(findCaptures(hand.track, 'right').from).toBe('inferred');
  });

  it('looks at the whole log where nothing is marked', () => {
    const { captures, from } = findCaptures(script().stay(1).track, 'left');
    expect(from).toBe('inferred');
    expect(captures.map(({ purpose, from: first, to }) => [purpose, first, to])).toEqual([
      ['rest', 0, 100],
      ['rim', 0, 100],
    ]);
  });

  it('takes releases that are marked without a capture at their word', () => {
    const hand = script().stay(1).mark('release', { stick: 'left' }).stay(1);
    const { captures, from } = findCaptures(hand.track, 'left');
    expect(from).toBe('inferred');
    expect(captures).toMatchObject([
      { purpose: 'rest', startUs: 1_000_000, endUs: 2_000_000 },
      { purpose: 'rim', startUs: 0, endUs: 2_000_000 },
    ]);
  });

  it('ends a log with its last entry of any kind', () => {
    const hand = script().stay(1);
    expect(lastUs(hand.track)).toBe(1_000_000);
    hand.t = 4_000_000;
    expect(lastUs(hand.mark('note').track)).toBe(4_000_000);
    expect(lastUs(script().lose(2).track)).toBe(2_000_000);
  });
});
