/** A limit that can be changed rules everywhere that its words say. */
import { describe, expect, it } from 'vitest';
import { findRestMissing, findRimUncovered } from '../../../core/findings/find-missing.ts';
import { findWarmingUp } from '../../../core/findings/find-warming-up.ts';
import { findOvershoot } from '../../../core/findings/find-overshoot.ts';
import { judgeTrack } from '../../../core/findings/judge-track.ts';
import { defaultLimits, limitIds, type Limits } from '../../../core/findings/limits.ts';
import { setLimits } from '../../../core/findings/set-limits.ts';
import { propose } from '../../../core/proposal/propose.ts';
import { demos } from '../../../core/simulate/demos.ts';
import { answerTrack } from '../../../core/zones/zones-report.ts';
import { missingSentences } from '../../../renderer/workbench/missing.ts';
import { proposeFor } from '../../../electron/bench/measure/propose-for.ts';
import { surveyUnit } from '../../blind/survey-unit.ts';
import { makeEvidence, sixTurns } from '../../support/make-evidence.ts';
import { fittingMapping, makeSubject } from './make-subject.ts';

const limitsWith = (values: Partial<Record<keyof Limits, number>>): Limits =>
  setLimits(defaultLimits, values, 'settings').limits;

const open = (from: number, to: number) => (degrees: number) => (degrees >= from && degrees <= to ? null : 1);

describe('the widest gap of directions', () => {
  const evidence = (from: number, to: number) =>
    makeEvidence({
      dwells: [{ point: { x: 2048, y: 2048 } }],
      turns: sixTurns((degrees) => (degrees >= from && degrees <= to ? null : 1000)),
      about: { x: 2048, y: 2048 },
    });
  const proposed = (gap: readonly [number, number], limits: Limits) =>
    proposeFor(
      { stick: 'left', evidence: evidence(gap[0], gap[1]), current: fittingMapping, findings: [] },
      { aim: 'full-reach', centreBy: 'mean', guard: 0.01 },
      limits,
    );

  it.each([
    [[100, 105], 10, true],
    [[100, 110], 10, false],
    [[100, 110], 15, true],
    [[100, 105], 5, false],
    [[100, 170], 75, true],
    [[100, 175], 75, false],
  ] as const)(
    '%j with %d degrees allowed: the proposal is made, and the gate called covered, alike',
    (gap, most, ok) => {
      const limits = limitsWith({ uncovered: most });
      const proposal = proposed(gap, limits);
      expect(proposal.ok).toBe(ok);
      if (!proposal.ok) expect(proposal.problem.says).toContain(`a gap may be ${most}° wide at most`);
      expect(findRimUncovered(makeSubject({ radius: open(gap[0], gap[1]) }), limits) === null).toBe(ok);
    },
  );

  it('never lets a whole quarter go', () => {
    const wish = { aim: 'full-reach', centreBy: 'mean', guard: 0.01, current: fittingMapping, seed: 1 } as const;
    const limits = { whole: true, least: 0, greatest: 4095 };
    expect(propose(evidence(100, 185), { ...wish, limits, widestGap: 360 })).toMatchObject({
      ok: false,
      problem: { code: 'proposal-not-covered' },
    });
  });
});

describe('the releases that a statement takes', () => {
  const track = surveyUnit({ ...demos.healthy.build, intervalMicros: 4000 }, 3);
  const more = limitsWith({ releases: 40 });

  it('rule the finding, the tolerance radius, the zones’ word and the sentence of what is missing', () => {
    const [usual, strict] = [judgeTrack(track, null), judgeTrack(track, null, more)];
    expect(usual.sticks.left?.rest?.toleranceRadius).toBeGreaterThan(0);
    expect(strict.sticks.left?.rest?.toleranceRadius).toBeNull();
    expect(usual.verdict.left).toBe('keep');
    expect(strict.verdict).toMatchObject({ left: 'undecided' });
    expect(strict.verdictWhy.left).toContain('40 are the least');
    expect(findRestMissing(makeSubject({ releases: 24 }), more)?.limit).toBe(40);

    const chain = {
      kind: 'stickwright-chain',
      version: 1,
      name: '',
      stages: [{ zone: 'radial', inner: 0.2 }],
      needs: null,
    } as const;
    expect(answerTrack(track, null, chain).sticks.left?.hides).toBe('hidden');
    expect(answerTrack(track, null, chain, 40).sticks.left?.hides).toMatch(/^hidden in \d+ of \d+ seen$/u);

    const whole = makeEvidence({
      dwells: Array.from({ length: 24 }, () => ({ point: { x: 2048, y: 2048 } })),
      turns: sixTurns(() => 1000),
    });
    expect(missingSentences(whole)).toEqual([]);
    expect(missingSentences({ ...whole, releasesNeeded: 40 })).toEqual([expect.stringContaining('need 40 at least')]);
  });
});

describe('what stands beside a finding', () => {
  it('is the limit that decides: a drift is judged by its significance, by no limit', () => {
    const drift = { x: 1, y: 0, u95: { x: 0.1, y: 0.1 } };
    const warmUp = { dwells: 9, drift, last: null, steady: false, seconds: 60 };
    const found = findWarmingUp(makeSubject({ report: { warmUp } }), defaultLimits);
    expect(found).toMatchObject({ decision: 'fail', limit: null });
  });

  it('names the zone that the limit of the overshoot stands for', () => {
    const at = { count: 3, unread: 0, settlingUs: { p50: 1, max: 1 }, band: { x: 1, y: 1 }, at: [0] };
    const flick = { ...at, overshoot: { largest: 0.08, mean: 0.08 }, overshootCounts: { largest: 8, mean: 8 } };
    const says = (limit: number) => findOvershoot(makeSubject({ report: { flick } }), limitsWith({ overshoot: limit }));
    expect(says(0.2)).toMatchObject({
      decision: 'pass',
      says: expect.stringMatching(/a zone of 20\.0\s?% hides/u) as string,
    });
    expect(says(0.03)).toMatchObject({ decision: 'fail', says: expect.stringMatching(/zone of 3\.0\s?%/u) as string });
  });
});

describe('a report', () => {
  it('says of every limit its value and where that is from', () => {
    const track = surveyUnit({ ...demos.healthy.build, intervalMicros: 4000 }, 3);
    const set = setLimits(limitsWith({ seat: 0.04, turn: 6 }), { turn: 7 }, 'file').limits;
    const { limits } = judgeTrack(track, null, set);
    expect(Object.keys(limits)).toEqual(limitIds);
    expect(limits).toMatchObject({
      seat: { value: 0.04, from: 'settings' },
      turn: { value: 7, from: 'file' },
      skew: { value: defaultLimits.skew.value, from: 'default' },
    });
  });
});
