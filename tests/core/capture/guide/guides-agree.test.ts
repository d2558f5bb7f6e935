import { describe, expect, it } from 'vitest';
import { gatherEvidence } from '../../../../core/capture/evidence/gather-evidence.ts';
import type { RestGuide } from '../../../../core/capture/guide/rest-guide.ts';
import type { RimGuide } from '../../../../core/capture/guide/rim-guide.ts';
import { GuidedHand } from './guided-hand.ts';
import { eightBits, twelveBits, type StickPlan } from './hand-script.ts';

const sticks: Readonly<Record<string, StickPlan>> = {
  'a sensor at 250 Hz': { fields: twelveBits, rest: { x: 2100, y: 1990 }, gate: () => 1400, noise: 2 },
  'a sensor at 1 kHz': { fields: twelveBits, rest: { x: 2100, y: 1990 }, gate: () => 1400, noise: 2, intervalUs: 1000 },
  'eight bits, reporting only changes': {
    fields: eightBits,
    rest: { x: 130, y: 122 },
    gate: () => 118,
    onChange: true,
    intervalUs: 8000,
  },
  'a clipped gate': { fields: eightBits, rest: { x: 131, y: 128 }, gate: () => 145, noise: 0.6 },
  'a hidden step of eight counts': {
    fields: twelveBits,
    rest: { x: 2048, y: 2048 },
    gate: () => 1500,
    step: 8,
    noise: 4,
  },
  'a gate off centre': {
    fields: twelveBits,
    rest: { x: 1900, y: 2200 },
    gate: (degrees) => 1300 + 350 * Math.cos(((degrees - 40) * Math.PI) / 180),
    noise: 1,
    intervalUs: 2000,
  },
};

function isOpen(guide: { readonly isDone: boolean }): boolean {
  return !guide.isDone;
}

/** A survey with everything that hands do wrong in it. */
function survey(plan: StickPlan, seed: number): { hand: GuidedHand; rest: RestGuide; rim: RimGuide } {
  const hand = new GuidedHand({ ...plan, seed }).stay(1).begin('rest');
  const rest = hand.restGuide(plan, 8);
  for (let attempt = 0; !rest.isDone && attempt < 40; attempt += 1) {
    const mishap = hand.chance();
    if (mishap < 0.1)
      hand
        .push(rest.toward ?? 0)
        .stay(1.5)
        .letGo()
        .stay(0.2);
    else if (mishap < 0.2) hand.push(200, 0.08).stay(1.5).letGo().stay(0.3);
    else if (mishap < 0.3)
      hand
        .press(true)
        .stay(0.1 + hand.chance())
        .press(false);
    hand.release(rest, 4);
    if (mishap > 0.85 && isOpen(rest)) rest.repeat(hand.t);
    if (mishap > 0.95 && isOpen(rest)) rest.skip(hand.t);
  }
  hand.end('rest').stay(0.5).begin('rim');
  const rim = hand.rimGuide(plan, 3, rest.rests);
  for (let attempt = 0; !rim.isDone && attempt < 12; attempt += 1) {
    const way = rim.wanted === 'clockwise' ? -1 : 1;
    hand.push(360 * hand.chance()).turn(way * (300 + 500 * hand.chance()), 1 + hand.chance());
    if (hand.chance() < 0.3 && isOpen(rim)) rim.repeat(hand.t);
    if (hand.chance() < 0.5) hand.letGo().stay(0.3);
  }
  rim.finish();
  hand.end('rim').letGo().stay(1);
  return { hand, rest, rim };
}

describe('what the guides counted is what the log proves', () => {
  for (const [name, plan] of Object.entries(sticks))
    it(`with ${name}`, () => {
      for (let seed = 1; seed <= 3; seed += 1) {
        const { hand, rest, rim } = survey(plan, seed);
        const evidence = gatherEvidence(hand.track, 'left');
        expect(rest.rests.length).toBeGreaterThan(2);
        expect(evidence.rest?.dwells).toHaveLength(rest.rests.length);
        evidence.rest?.dwells.forEach(({ point }, i) => {
          expect(point.x).toBeCloseTo(rest.rests[i]?.x ?? Number.NaN, 8);
          expect(point.y).toBeCloseTo(rest.rests[i]?.y ?? Number.NaN, 8);
        });
        const turns = evidence.rim?.turns ?? [];
        expect(turns.length).toBeGreaterThan(3);
        expect(turns.filter(({ way }) => way === 'clockwise')).toHaveLength(rim.turns.clockwise);
        expect(turns.filter(({ way }) => way === 'counterClockwise')).toHaveLength(rim.turns.counterClockwise);
        const counts = rim.covered.map((_, k) => turns.filter((turn) => (turn.points[k] ?? null) !== null).length);
        expect(counts).toEqual(rim.covered.map(({ clockwise, counterClockwise }) => clockwise + counterClockwise));
      }
    }, 60_000);
});
