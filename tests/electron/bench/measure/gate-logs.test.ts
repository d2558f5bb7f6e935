/** What a log is judged with, where another one tells its gate. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Track } from '../../../../core/capture/evidence/track.ts';
import type { KnownGates } from '../../../../core/findings/gate-from-track.ts';
import type { Finding } from '../../../../core/findings/finding.ts';
import { defaultLimits } from '../../../../core/findings/limits.ts';
import { drawUnit } from '../../../../core/simulate/draw-unit.ts';
import { applyFault } from '../../../../core/simulate/faults.ts';
import { judgeLog } from '../../../../electron/bench/measure/judge-log.ts';
import { proposeForLog } from '../../../../electron/bench/measure/log-answers.ts';
import { knownOf, tellGate } from '../../../../electron/bench/measure/gate-logs.ts';
import { surveyUnit } from '../../../blind/survey-unit.ts';
import { makeSurveyTrack } from '../../../support/make-survey-track.ts';
import { sensorFields } from '../../../support/fields.ts';

/** A drawn part that is tilted and reads 8 % short on the same side, and a straight one in its shell. */
const build = drawUnit(5);
let reference: Track;

beforeAll(() => {
  const { left } = build.sticks;
  const straight = { ...left, gate: { ...left.gate, centre: { x: 0, y: 0 } } };
  reference = surveyUnit({ ...build, sticks: { ...build.sticks, left: straight } }, 6);
}, 60_000);

function surveyTilted(degrees: number): Track {
  return surveyUnit(applyFault(applyFault(build, 'seat-not-flat', degrees), 'short-range', 8), 5);
}

function seatOf(degrees: number): { readonly alone: Finding; readonly known: Finding } {
  const track = surveyTilted(degrees);
  const under = (gates: KnownGates): Finding =>
    judgeLog(track, { mapping: null, limits: defaultLimits, gates }).report.findings.find(
      ({ id, stick }) => id === 'seat-not-flat' && stick === 'left',
    )!;
  return { alone: under({}), known: under(knownOf({ left: tellGate(reference, 'left', 'reference part') })) };
}

describe('the gate of a judged log', () => {
  it('makes a tilt beside a short side at least three times finer where a reference part tells it', () => {
    const { alone, known } = seatOf(1.5);
    expect(known.u95!).toBeLessThan(alone.u95! / 3);
    expect(known.for).toContain('The waves of the gate are known from a reference part in this shell.');
    expect(alone.against.join(' ')).toContain('a reference part in this shell');
    expect(known.against.join(' ')).not.toContain('a reference part');
  });

  it('shows a tilt that the short side hides without it', () => {
    const { alone, known } = seatOf(1);
    expect([alone.decision, known.decision]).toEqual(['pass', 'fail']);
  });

  it('stands in what a proposal would only hide', () => {
    const track = surveyTilted(1);
    const wish = { aim: 'edges', centreBy: 'mean', guard: 0.01 } as const;
    const hides = (gates: KnownGates): string =>
      proposeForLog(track, { mapping: null, limits: defaultLimits, gates }, wish).sticks.left?.hides ?? '';
    expect(hides({})).toContain('(short range)');
    expect(hides(knownOf({ left: tellGate(reference, 'left', 'reference part') }))).toContain('seat not flat');
  });

  it('is not told by a log without a rest of the stick, and said so', () => {
    const track = makeSurveyTrack({
      fields: sensorFields,
      rest: { x: 2000, y: 2000 },
      gate: 1200,
      releases: 0,
      turnsEachWay: 3,
    });
    const told = tellGate(track, 'left', 'earlier part');
    expect(told).toMatchObject({ ok: false, problem: { code: 'gate-untold' } });
    expect(told.ok ? '' : told.problem.says).toMatch(
      /tells nothing of the gate of the left stick; take one with a rest/u,
    );
    expect(knownOf({ left: told })).toEqual({});
  });
});
