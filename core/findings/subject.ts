/** One stick as findings look at it: its measures and what the log says beyond them, gathered once. */
import type { RestEvidence } from '../capture/evidence/evidence.ts';
import { countSurveys } from '../capture/evidence/capture-marks.ts';
import { findCaptures, lastUs } from '../capture/evidence/find-captures.ts';
import { gatherEvidence } from '../capture/evidence/gather-evidence.ts';
import { LEAST_RELEASES } from '../capture/evidence/least-releases.ts';
import type { SignalLoss } from '../capture/evidence/signal-losses.ts';
import type { Capture, Track } from '../capture/evidence/track.ts';
import { waysAlong } from '../capture/evidence/ways-along.ts';
import { lossesOf } from '../capture/evidence/without-losses.ts';
import type { StickReport, TrackMeasures } from '../measure/measure-report.ts';
import type { Domain, Pair, StickFields, StickId } from '../pad/stick.ts';
import { axesTogether } from './axes-together.ts';
import { middleBand, type MiddleBand } from './middle-band.ts';
import { fitOutline, type Outline } from './outline/fit-outline.ts';
import type { GateSource, KnownGate } from './outline/known-gate.ts';
import { outlinePoints, stepOf } from './outline-points.ts';
import type { PinnedSide } from './pinned-sides.ts';
import { promptedWays, type PromptedWays } from './prompted-ways.ts';
import { restAbout } from './rest-about.ts';
import { returnTimes, type Return } from './return-times.ts';
import { stickLayers, type StickLayers } from './stored-layers.ts';
import { unsettledNoise } from './unsettled-noise.ts';

export interface Extent {
  readonly least: number;
  readonly greatest: number;
}

export interface Subject {
  readonly stick: StickId;
  readonly report: StickReport;
  readonly fields: StickFields;
  readonly domain: Domain;
  /** What the gate and the sensors look like; null where the rim does not tell. Its centre counts from `about`. */
  readonly outline: Outline | null;
  /** Where more is known of the gate than what moulding makes of one: from what. */
  readonly gateFrom: GateSource | null;
  /** Directions are taken about the mean rest of at least some releases: only then the outline's centre means anything. */
  readonly aboutRest: boolean;
  /** Counts from the rest to the gate along each axis: of the outline, else of what the mapping spans. */
  readonly half: Pair;
  readonly pinned: readonly PinnedSide[];
  /** Of all readings of the log, raw counts; null without any. */
  readonly extents: { readonly x: Extent; readonly y: Extent } | null;
  readonly prompted: PromptedWays | null;
  /** σ of readings that did not settle into enough dwells, counts; null where they did, or where it cannot be told. */
  readonly unsettled: Pair | null;
  readonly layers: StickLayers | null;
  /** Where the signal left the stick, and of how many readings. */
  readonly losses: readonly SignalLoss[];
  readonly readings: number;
  /** Usual interval of the reports, microseconds; null where none can be told. */
  readonly intervalUs: number | null;
  /** Seconds of each return in the rest captures. */
  readonly returns: readonly Return[];
  /** Share of each axis that appears on the other, signed; null without a gate. */
  readonly together: number | null;
  /** Rest points that lie together, raw counts, and those that do not; the time from the first to the end of the last capture of the stick. */
  readonly rests: readonly Pair[];
  readonly odd: NonNullable<RestEvidence['odd']>;
  readonly unpushed: NonNullable<RestEvidence['unpushed']>;
  readonly surveyUs: number | null;
  readonly restCaptures: number;
  /** How many surveys of the stick the log holds, of which the last is looked at. */
  readonly surveys: number;
  /** What the pad itself hides about the middle; null in sensor counts and where no sweep tells. */
  readonly middleBand: MiddleBand | null;
}

function isOfStick({ purpose }: Capture): boolean {
  return purpose !== 'inputs' && purpose !== 'disturbance';
}

/** Null where the log has no readings of the stick. */
export function subjectOf(
  track: Track,
  stick: StickId,
  measures: TrackMeasures,
  releasesNeeded = LEAST_RELEASES,
  known: KnownGate | null = null,
): Subject | null {
  const report = measures.sticks[stick];
  const readings = track.sticks[stick];
  if (report === undefined || readings === undefined) return null;
  const { fields } = readings;
  const { rest } = report;
  const step = stepOf(report);
  const { points, mostGap, pinned } = outlinePoints(track, stick, report);
  const outline = fitOutline(points, { mostGap, known });
  const half = outline === null ? halfOf(report) : { x: meanSpan(outline, 'x'), y: meanSpan(outline, 'y') };
  const evidence = gatherEvidence(track, stick, releasesNeeded);
  const { captures } = findCaptures(track, stick);
  const dwells = evidence.rest?.dwells ?? [];
  const odd = evidence.rest?.odd ?? [];
  const cameToRest = [...dwells, ...odd.map(({ dwell }) => dwell)].toSorted((a, b) => a.startUs - b.startUs);
  const isReported = measures.log.domain === 'reported';
  return {
    stick,
    report,
    fields,
    domain: measures.log.domain,
    outline,
    gateFrom: known?.from ?? null,
    aboutRest: (rest?.releases ?? 0) > 0,
    half,
    intervalUs: measures.log.interval?.p50Us ?? null,
    returns: returnTimes(readings, captures, rest?.point ?? restAbout(readings, captures), half, cameToRest).map(
      (one) => ({
        ...one,
        whole: one.whole && rest !== null,
      }),
    ),
    together: evidence.rim === null ? null : axesTogether(waysAlong(evidence.rim)),
    rests: dwells.map(({ point }) => point),
    odd,
    unpushed: evidence.rest?.unpushed ?? [],
    surveyUs:
      dwells.length < 2
        ? null
        : Math.max(dwells.at(-1)?.endUs ?? 0, ...captures.filter(isOfStick).map(({ endUs }) => endUs)) -
          (dwells[0]?.startUs ?? 0),
    restCaptures: captures.filter(({ purpose }) => purpose === 'rest').length,
    surveys: countSurveys(track.marks, stick, lastUs(track)),
    middleBand: isReported && rest !== null ? middleBand(track, stick, rest.point, half) : null,
    pinned,
    extents: readings.t.length === 0 ? null : { x: extentOf(readings.x), y: extentOf(readings.y) },
    prompted: rest === null ? null : promptedWays(track, stick, rest.point),
    unsettled: isUnsettled(report) ? unsettledNoise(track, stick, step) : null,
    layers: stickLayers(track.marks, stick),
    losses: lossesOf(track, stick),
    readings: readings.t.length,
  };
}

/**
 * Of a rest capture fewer releases than asked for settled, or nothing of a whole log did. Where a log without marks holds still
 * stretches they tell the noise themselves: nobody was asked to let go, so that few releases say nothing of it.
 */
function isUnsettled({ rest, captures }: StickReport): boolean {
  return captures === 'inferred' ? rest === null : (rest?.releases ?? 0) < LEAST_RELEASES;
}

function meanSpan({ value }: Outline, axis: 'x' | 'y'): number {
  return axis === 'x' ? (value.xPlus + value.xMinus) / 2 : (value.yPlus + value.yMinus) / 2;
}

function halfOf({ mapping }: StickReport): Pair {
  return { x: (mapping.x.max - mapping.x.min) / 2, y: (mapping.y.max - mapping.y.min) / 2 };
}

function extentOf(counts: Float64Array): Extent {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  for (const count of counts) {
    least = Math.min(least, count);
    greatest = Math.max(greatest, count);
  }
  return { least, greatest };
}
