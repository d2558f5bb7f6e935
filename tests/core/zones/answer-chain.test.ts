import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { answerZones } from '../../../core/zones/answer-chain.ts';
import type { Chain, Stage } from '../../../core/zones/chain.ts';
import { makeBenchStick, makeEvidence, sixTurns, type DwellWish, type TurnWish } from '../../support/make-evidence.ts';

const axis = { min: 1048, centre: 2048, max: 3048 };
const mapping: StickMapping = { x: axis, y: axis };
const middle = { x: 2048, y: 2048 };

function chainOf(stages: readonly Stage[], needs: number | null = null): Chain {
  return { kind: 'stickwright-chain', version: 1, name: 'test', stages, needs };
}

function zone(inner: number): Chain {
  return chainOf([{ zone: 'radial', inner }]);
}

/** So many releases at the same place. */
function resting(x: number, y: number, releases = 24): DwellWish[] {
  return Array.from({ length: releases }, () => ({ point: { x: 2048 + x, y: 2048 + y } }));
}

describe('answerZones', () => {
  it('counts releases that leak with the exact upper bound', () => {
    const dwells = [...resting(0, 0, 22), ...resting(30, 40, 2)];
    const evidence = makeEvidence({ dwells });
    const { leaks, hides } = answerZones(evidence, mapping, zone(0.04));
    expect(leaks).toMatchObject({ releases: 24, leaking: 2 });
    expect(leaks?.share).toBeCloseTo(2 / 24, 12);
    expect(leaks?.largestOutput).toBeCloseTo(0.05, 12);
    expect(hides).toBe('leaks');
    // 0 of 24 → 0.117.
    const clean = answerZones(evidence, mapping, zone(0.05));
    expect(clean.leaks).toMatchObject({ leaking: 0, share: 0, largestOutput: 0 });
    expect(clean.leaks?.upperBound95).toBeCloseTo(0.117, 3);
  });

  it('lets a release leak for a single reading', () => {
    const dwells = [...resting(0, 0, 23), { point: middle, readings: [2048, 2048, 2098, 2048, 2047, 2048] }];
    expect(answerZones(makeEvidence({ dwells }), mapping, zone(0.049)).leaks?.leaking).toBe(1);
    expect(answerZones(makeEvidence({ dwells }), mapping, zone(0.05)).leaks?.leaking).toBe(0);
  });

  it('is hidden only where the tolerance radius is inside too', () => {
    const evidence = makeBenchStick({
      seed: 3,
      releases: 24,
      rest: { x: 2058, y: 2038 },
      scatter: 4,
      noise: 1,
      gate: 1000,
    });
    const { smallestZone } = answerZones(evidence, mapping, zone(0.5));
    const tolerance = smallestZone?.tolerance99 ?? Number.NaN;
    const observed = smallestZone?.observed ?? Number.NaN;
    expect(tolerance).toBeGreaterThan(observed);
    expect(answerZones(evidence, mapping, zone(tolerance)).hides).toBe('hidden');
    expect(answerZones(evidence, mapping, zone(tolerance - 1e-6)).hides).toBe('hidden in 24 of 24 seen');
    expect(answerZones(evidence, mapping, zone(observed)).hides).toBe('hidden in 24 of 24 seen');
    expect(answerZones(evidence, mapping, zone(observed - 1e-6)).hides).toBe('leaks');
  });

  it('claims no more than was seen from fewer than twelve releases', () => {
    const answer = answerZones(makeEvidence({ dwells: resting(0, 0, 11) }), mapping, zone(0.9));
    expect(answer.hides).toBe('hidden in 11 of 11 seen');
    expect(answer.smallestZone?.tolerance99).toBeNull();
    expect(answerZones(makeEvidence({ dwells: resting(0, 0, 12) }), mapping, zone(0.9)).hides).toBe('hidden');
  });

  it('leaks at rest by an even quantiser alone', () => {
    const answer = answerZones(
      makeEvidence({ dwells: resting(0, 0) }),
      mapping,
      chainOf([{ quantise: { bits: 8, levels: 'even' } }]),
    );
    expect(answer.hides).toBe('leaks');
    expect(answer.onset?.every(({ deflection }) => deflection === 0)).toBe(true);
  });

  it('feeds the chain with the limited deflection', () => {
    const answer = answerZones(makeEvidence({ dwells: resting(1500, 0) }), mapping, chainOf([]));
    expect(answer.leaks?.largestOutput).toBe(1);
    expect(answer.smallestZone?.observed).toBe(1);
  });

  it('finds the onset of a radial zone in closed form', () => {
    // −r·cos φ + √(d² − r²·sin² φ) for an offset r ≤ d at the angle φ to the push.
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.4, noNaN: true }),
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
        fc.constantFrom('radial' as const, 'scaledRadial' as const),
        (d, share, turn, shape) => {
          const r = d * share;
          const dwells = [{ point: { x: 2048 + 1000 * r * Math.cos(turn), y: 2048 + 1000 * r * Math.sin(turn) } }];
          const evidence = makeEvidence({ dwells, turns: sixTurns(() => 1000), about: middle });
          const answer = answerZones(evidence, mapping, chainOf([{ zone: shape, inner: d }]));
          for (const { angle, deflection } of answer.onset ?? []) {
            const phi = turn - (angle * Math.PI) / 180;
            expect(deflection).toBeCloseTo(-r * Math.cos(phi) + Math.sqrt(d * d - (r * Math.sin(phi)) ** 2), 9);
          }
          expect(answer.unevenness).toBeLessThanOrEqual(2 * r + 1e-9);
          expect(answer.unevenness).toBeGreaterThan(2 * r * 0.99 - 1e-9);
        },
      ),
      { seed: 111, numRuns: 25 },
    );
  });

  it('says what the smallest zone costs: the onset it leaves on either side of the offset', () => {
    const evidence = makeEvidence({ dwells: resting(30, 40) });
    const { smallestZone } = answerZones(evidence, mapping, zone(0.1));
    expect(smallestZone?.observed).toBeCloseTo(0.05, 12);
    expect(smallestZone?.costs.observed.least).toBeCloseTo(0, 12);
    expect(smallestZone?.costs.observed.largest).toBeCloseTo(0.1, 12);
    const tolerance = smallestZone?.tolerance99 ?? Number.NaN;
    expect(smallestZone?.costs.tolerance99?.largest).toBeCloseTo(tolerance + 0.05, 12);
  });

  it('looks for the onset up to the gate where it is covered, and up to full tilt elsewhere', () => {
    const radius = (degrees: number) => (degrees < 180 ? 600 : null);
    const evidence = makeEvidence({ dwells: resting(0, 0), turns: sixTurns(radius), about: middle });
    const answer = answerZones(evidence, mapping, zone(0.8));
    const at = (angle: number) => answer.onset?.find((one) => one.angle === angle)?.deflection;
    expect(at(90)).toBeNull();
    expect(at(270)).toBeCloseTo(0.8, 9);
    expect(answer.unevenness).toBeCloseTo(0, 9);
    expect(answerZones(evidence, mapping, zone(1)).onset?.every(({ deflection }) => deflection === null)).toBe(true);
    expect(answerZones(evidence, mapping, zone(1)).unevenness).toBeNull();
  });

  it('gives the output at the gate per direction and the directions below the need', () => {
    const radius = (degrees: number) => (degrees === 45 ? 800 : degrees === 50 ? null : 1000);
    const evidence = makeEvidence({ dwells: resting(0, 0), turns: sixTurns(radius), about: middle });
    const answer = answerZones(evidence, mapping, chainOf([{ zone: 'scaledRadial', inner: 0.2, outer: 1 }], 0.9));
    expect(answer.gate?.[9]?.output).toBeCloseTo(0.75, 9);
    expect(answer.gate?.[0]?.output).toBeCloseTo(1, 9);
    expect(answer.gate?.[10]).toEqual({ angle: 50, output: null, covered: false });
    expect(answer.unreached).toEqual([45]);
    expect(answerZones(evidence, mapping, chainOf([], null)).unreached).toBeNull();
  });

  it('does not judge a need on a thin direction', () => {
    const turns: TurnWish[] = [
      ...sixTurns((degrees) => (degrees === 90 ? null : 1000)),
      { way: 'clockwise', radius: (degrees) => (degrees === 90 ? 500 : 1000) },
    ];
    const answer = answerZones(makeEvidence({ turns, about: middle }), mapping, chainOf([], 0.9));
    expect(answer.gate?.[18]).toEqual({ angle: 90, output: expect.closeTo(0.5, 9) as number, covered: false });
    expect(answer.unreached).toEqual([]);
  });

  it('of a stick that only lay still states the onset and the zone for what was seen, and no leaks', () => {
    const still = makeEvidence({ dwells: resting(30, 40, 1) }).rest!.dwells;
    const answer = answerZones({ ...makeEvidence({}), still }, mapping, zone(0.1));
    expect(answer).toMatchObject({ leaks: null, hides: null });
    expect(answer.smallestZone?.observed).toBeCloseTo(0.05, 12);
    expect(answer.smallestZone?.tolerance99).toBeNull();
    expect(answer.onset?.[0]?.deflection).toBeCloseTo(Math.sqrt(0.01 - 0.0016) - 0.03, 9);
  });

  it('leaves null what its capture is missing for', () => {
    const noRest = answerZones(makeEvidence({ turns: sixTurns(() => 1000) }), mapping, zone(0.1));
    expect(noRest).toMatchObject({ leaks: null, hides: null, smallestZone: null, onset: null, unevenness: null });
    expect(noRest.gate).toHaveLength(72);
    const noRim = answerZones(makeEvidence({ dwells: resting(0, 0) }), mapping, chainOf([], 0.9));
    expect(noRim).toMatchObject({ gate: null, unreached: null });
    expect(noRim.onset).toHaveLength(72);
    const nothing = answerZones(makeEvidence({ dwells: [] }), mapping, zone(0.1));
    expect(nothing).toMatchObject({ leaks: null, onset: null, gate: null });
  });
});
