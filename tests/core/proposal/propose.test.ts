import { describe, expect, it } from 'vitest';
import type { StickEvidence } from '../../../core/capture/evidence/evidence.ts';
import { deflect } from '../../../core/mapping/deflect.ts';
import type { StickMapping } from '../../../core/mapping/mapping.ts';
import { rawPoint } from '../../../core/mapping/raw-point.ts';
import { directionPoints } from '../../../core/measure/direction-points.ts';
import type { ProposalWish } from '../../../core/proposal/proposal.ts';
import { propose } from '../../../core/proposal/propose.ts';
import { makeBenchStick, makeEvidence, sixTurns, type TurnWish } from '../../support/make-evidence.ts';

const current: StickMapping = { x: { min: 0, centre: 2047.5, max: 4095 }, y: { min: 0, centre: 2047.5, max: 4095 } };
const wish: ProposalWish = {
  widestGap: 10,
  aim: 'full-reach',
  centreBy: 'steadiest',
  guard: 0.01,
  current,
  limits: { whole: true, least: 0, greatest: 4095 },
  seed: 1,
};
const stick = makeBenchStick({ seed: 3, releases: 24, rest: { x: 2110, y: 1980 }, scatter: 9, noise: 1, gate: 1250 });

function reachesUnder(evidence: StickEvidence, mapping: StickMapping): number[] {
  const { rim, fields } = evidence;
  return directionPoints(rim!.turns).map(({ point }) => {
    const d = deflect(mapping, fields, rawPoint(rim!.about, fields, point!));
    return Math.hypot(d.x, d.y);
  });
}

function gated(radius: TurnWish['radius']): StickEvidence {
  return makeEvidence({
    dwells: Array.from({ length: 24 }, () => ({ point: { x: 2048, y: 2048 } })),
    turns: sixTurns(radius),
  });
}

describe('a proposal', () => {
  it('for full-reach gives every direction full output and the guard, and predicts just that', () => {
    const found = propose(stick, wish);
    if (!found.ok) throw new Error(found.problem.says);
    const { mapping, predicted, guard } = found.value;
    const reaches = reachesUnder(stick, mapping);
    expect(guard).toBeGreaterThanOrEqual(0.01);
    expect(Math.min(...reaches)).toBeGreaterThanOrEqual(1 + guard - 1e-9);
    expect(predicted.rim?.leastReach?.value).toBeCloseTo(Math.min(...reaches), 12);
    expect(predicted.rim?.fullReachShare).toBe(1);
    expect(predicted.rest!.offset.magnitude).toBeLessThan(found.value.current.rest!.offset.magnitude);
  });

  it('for even has a smaller mean radial miss than full-reach', () => {
    const miss = (mapping: StickMapping): number =>
      reachesUnder(stick, mapping).reduce((sum, reach) => sum + Math.abs(reach - 1), 0);
    const full = propose(stick, wish);
    const even = propose(stick, { ...wish, aim: 'even' });
    if (!full.ok || !even.ok) throw new Error('both aims have an answer');
    expect(miss(even.value.mapping)).toBeLessThan(miss(full.value.mapping));
  });

  it('for edges takes the median over turns of each extreme', () => {
    const evidence = gated(() => 1000);
    const found = propose(evidence, { ...wish, aim: 'edges' });
    expect(found.ok && found.value.mapping).toEqual({
      x: { min: 1048, centre: 2048, max: 3048 },
      y: { min: 1048, centre: 2048, max: 3048 },
    });
  });

  it('gives each of the six numbers its reason, with what the captures say of its certainty', () => {
    const found = propose(stick, wish);
    if (!found.ok) throw new Error(found.problem.says);
    expect(found.value.reasons.map((reason) => reason.of)).toEqual([
      'x.min',
      'x.centre',
      'x.max',
      'y.min',
      'y.centre',
      'y.max',
    ]);
    for (const { of, u95, leaveOneOut, says } of found.value.reasons) {
      expect(says).toMatch(/\.$/);
      if (of.endsWith('centre')) expect(u95).toBeGreaterThan(0);
      else {
        // Six turns are too few for an interval; the range under leave-one-out stands instead.
        expect(u95).toBeNull();
        expect(leaveOneOut!.least).toBeLessThanOrEqual(leaveOneOut!.greatest);
      }
    }
  });

  it('is the same for the same seed', () => {
    expect(propose(stick, wish)).toEqual(propose(stick, wish));
  });

  it('raises the guard to twice the pooled spread of shaky turns', () => {
    let turn = 0;
    const shaky = gated((degrees) => 1000 * (1 + ((turn++ * 7919 + degrees) % 11) / 100));
    const found = propose(shaky, wish);
    if (!found.ok) throw new Error(found.problem.says);
    expect(found.value.guard).toBeGreaterThan(0.03);
  });

  it('keeps to what the layer can hold', () => {
    const found = propose(stick, { ...wish, limits: { whole: true, least: 900, greatest: 3300 } });
    if (!found.ok) throw new Error(found.problem.says);
    for (const axis of [found.value.mapping.x, found.value.mapping.y]) {
      expect(axis.min).toBeGreaterThanOrEqual(900);
      expect(axis.max).toBeLessThanOrEqual(3300);
    }
  });

  it('accepts a gap of 10° and refuses a wider one by name', () => {
    expect(
      propose(
        gated((degrees) => (degrees >= 100 && degrees <= 105 ? null : 1000)),
        wish,
      ).ok,
    ).toBe(true);
    const refused = propose(
      gated((degrees) => (degrees >= 100 && degrees <= 120 ? null : 1000)),
      wish,
    );
    expect(refused).toMatchObject({ ok: false, problem: { code: 'proposal-not-covered' } });
    expect(refused.ok ? '' : refused.problem.says).toContain('from 100° to 120°');
  });

  it('names a gap across 0° from its far side', () => {
    const refused = propose(
      gated((degrees) => (degrees >= 350 || degrees <= 10 ? null : 1000)),
      wish,
    );
    expect(refused.ok ? '' : refused.problem.says).toContain('from 350° to 10°');
  });

  it.each([
    ['proposal-no-rest', makeEvidence({ turns: sixTurns(() => 1000) }), wish],
    ['proposal-no-rim', makeEvidence({ dwells: [{ point: { x: 2048, y: 2048 } }] }), wish],
    [
      'proposal-no-turn',
      makeEvidence({ dwells: [{ point: { x: 2048, y: 2048 } }], turns: [] }),
      { ...wish, aim: 'edges' as const },
    ],
    ['proposal-not-covered', makeEvidence({ dwells: [{ point: { x: 2048, y: 2048 } }], turns: [] }), wish],
    [
      'proposal-no-centre',
      gated(() => 1000),
      { ...wish, current: { x: { min: 3000, centre: 3200, max: 3400 }, y: { min: 0, centre: 2048, max: 4095 } } },
    ],
  ])('is refused as %s', (code, evidence, asked) => {
    expect(propose(evidence, asked)).toMatchObject({ ok: false, problem: { code } });
  });

  it('needs only one release for a centre, and says that nothing is known of its certainty', () => {
    const one = makeEvidence({ dwells: [{ point: { x: 2048, y: 2048 } }], turns: sixTurns(() => 1000) });
    const found = propose(one, wish);
    expect(found.ok && found.value.reasons.find((reason) => reason.of === 'x.centre')?.u95).toBeNull();
  });

  it('has a stick that never moved refused, not divided by zero', () => {
    expect(
      propose(
        gated(() => 0),
        wish,
      ),
    ).toMatchObject({ ok: false, problem: { code: 'proposal-impossible' } });
    expect(
      propose(
        gated(() => 0),
        { ...wish, aim: 'edges' },
      ).ok,
    ).toBe(false);
  });
});
