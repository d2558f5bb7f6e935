/** Everything that `measure` prints of one log: the measures, the findings held against limits, the verdicts. */
import { markedSpans } from '../capture/evidence/capture-marks.ts';
import type { Track } from '../capture/evidence/track.ts';
import { withoutLosses } from '../capture/evidence/without-losses.ts';
import type { PadMapping } from '../mapping/mapping.ts';
import { measureTrack, type TrackMeasures } from '../measure/measure-report.ts';
import type { PadOwner } from '../pad/owner.ts';
import { STICKS, type StickId } from '../pad/stick.ts';
import { findClipped } from './find-clipped.ts';
import { findDeadAxis } from './find-dead-axis.ts';
import { findDisturbedRest } from './find-disturbed-rest.ts';
import { findInputs } from './find-inputs.ts';
import { findLateReports } from './find-late-reports.ts';
import { findLayers } from './find-layers.ts';
import { findLooseReturn } from './find-loose-return.ts';
import { findRestMissing, findRimUncovered } from './find-missing.ts';
import { findNoisyJoint } from './find-noisy-joint.ts';
import { findOffCentre } from './find-off-centre.ts';
import { findOtherPad } from './find-other-pad.ts';
import { findOvershoot } from './find-overshoot.ts';
import { findSeat } from './find-seat.ts';
import { findSeveralSurveys } from './find-several-surveys.ts';
import { findShortRange } from './find-short-range.ts';
import { findSkewed } from './find-skewed.ts';
import { findStaleMapping } from './find-stale-mapping.ts';
import { findTurned } from './find-turned.ts';
import { findWarmingUp } from './find-warming-up.ts';
import { findInverted, findSwapped } from './find-wiring.ts';
import { findAxesTogether } from './find-axes-together.ts';
import { findDriftingRest } from './find-drifting-rest.ts';
import { findHiddenRest } from './find-hidden-rest.ts';
import { findOddRelease } from './find-odd-release.ts';
import { findUnpushedRelease } from './find-unpushed-release.ts';
import { findSignalLost } from './find-signal-lost.ts';
import { findSlowReturn } from './find-slow-return.ts';
import { findTwoRests } from './find-two-rests.ts';
import { findUnevenReach } from './find-uneven-reach.ts';
import { findWornTrack } from './find-worn-track.ts';
import type { Finding, Verdict } from './finding.ts';
import type { KnownGates } from './gate-from-track.ts';
import { defaultLimits, limitIds, type LimitId, type Limits, type LimitSetBy } from './limits.ts';
import { notSurveyed } from './not-surveyed.ts';
import { rankFindings } from './rank-findings.ts';
import { subjectOf, type Subject } from './subject.ts';
import { verdictOf } from './verdict.ts';

export interface MeasureReport extends TrackMeasures {
  readonly kind: 'stickwright-measure';
  readonly version: 1;
  /** The one that accounts for most first; passes last. */
  readonly findings: readonly Finding[];
  readonly verdict: Readonly<Partial<Record<StickId, Verdict>>>;
  /** One sentence for each verdict. */
  readonly verdictWhy: Readonly<Partial<Record<StickId, string>>>;
  /** What was held against. */
  readonly limits: LimitsSaid;
}

export type LimitsSaid = Readonly<Record<LimitId, { readonly value: number; readonly from: LimitSetBy }>>;

/** Those that look at one stick and nothing else. */
const OF_STICK: readonly ((subject: Subject, limits: Limits) => Finding | null)[] = [
  findSeveralSurveys,
  findRestMissing,
  findRimUncovered,
  findDeadAxis,
  findSignalLost,
  findAxesTogether,
  findSwapped,
  findInverted,
  findSeat,
  findOffCentre,
  findShortRange,
  findSkewed,
  findTurned,
  findClipped,
  findWornTrack,
  findNoisyJoint,
  findDriftingRest,
  findTwoRests,
  findOddRelease,
  findUnpushedRelease,
  findLooseReturn,
  findSlowReturn,
  findHiddenRest,
  findUnevenReach,
  findOvershoot,
  findStaleMapping,
  findLayers,
  findDisturbedRest,
  findWarmingUp,
];

/**
 * Measures and judges a track under a mapping from a file, else the pad's stored one, else the fields' range. `owner` is the
 * pad that the mapping file says it is of, null where it says nothing; `gates` what other surveys told of the gates.
 */
export function judgeTrack(
  whole: Track,
  mapping: PadMapping | null,
  limits: Limits = defaultLimits,
  owner: PadOwner | null = null,
  gates: KnownGates = {},
): MeasureReport {
  const track = withoutLosses(whole);
  const measures = measureTrack(track, mapping, limits.releases.value);
  const ofSticks = STICKS.flatMap((stick) => {
    const subject = subjectOf(track, stick, measures, limits.releases.value, gates[stick] ?? null);
    if (subject === null) return [];
    const judged = OF_STICK.map((find) => find(subject, limits));
    return [...judged, findOtherPad(subject, track.header.pad, owner, limits)].filter((one) => one !== null);
  });
  const ofPad = [judgeInputs(track, measures, limits), findLateReports(measures.log, limits)].filter(
    (one) => one !== null,
  );
  const findings = rankFindings([...ofSticks, ...ofPad]);
  const verdicts = STICKS.flatMap((stick) => {
    const why = notSurveyed(track, stick, measures.sticks);
    if (measures.sticks[stick] === undefined && why === null) return [];
    const judged = verdictOf(
      findings.filter((one) => one.stick === stick),
      measures.log.domain,
    );
    // A fault that stands whatever is missing decides all the same.
    const said = why === null || judged.verdict !== 'undecided' ? judged : { verdict: 'not surveyed' as const, why };
    return [[stick, said] as const];
  });
  return {
    kind: 'stickwright-measure',
    version: 1,
    ...measures,
    findings,
    verdict: Object.fromEntries(verdicts.map(([stick, { verdict }]) => [stick, verdict])),
    verdictWhy: Object.fromEntries(verdicts.map(([stick, { why }]) => [stick, why])),
    limits: sayLimits(limits),
  };
}

/** Limits in force with where their values are from; all of them, or those that were asked. */
export function sayLimits(limits: Limits): LimitsSaid;
export function sayLimits(limits: Limits, ids: readonly LimitId[]): Partial<LimitsSaid>;
export function sayLimits(limits: Limits, ids = limitIds): Partial<LimitsSaid> {
  return Object.fromEntries(ids.map((id) => [id, { value: limits[id].value, from: limits[id].setBy }]));
}

function judgeInputs(track: Track, { inputs, log }: TrackMeasures, limits: Limits): Finding | null {
  const captured = STICKS.some((stick) =>
    markedSpans(track.marks, stick, log.durationUs).some(({ purpose }) => purpose === 'inputs'),
  );
  return findInputs(inputs, log.interval?.p50Us ?? null, captured, limits);
}
