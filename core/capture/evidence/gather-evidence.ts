/** Gathers what a log proves about one stick, whatever the mapping. */
import type { Pair, StickFields, StickId } from '../../pad/stick.ts';
import { firstReleaseUs, marksOf } from './capture-marks.ts';
import { effectiveSteps } from './effective-step.ts';
import type { Dwell, StickEvidence } from './evidence.ts';
import { findCaptures, lastUs } from './find-captures.ts';
import { inferredTurns, joinWays, markedTurns, middleOfExtents, rimOf, type Ways } from './gather-rim.ts';
import { inferRest } from './inferred-rest.ts';
import { LEAST_RELEASES } from './least-releases.ts';
import { middleOf } from './main-rest.ts';
import { markedRest } from './marked-rest.ts';
import { partOdd } from './part-odd.ts';
import { partUnpushed } from './part-unpushed.ts';
import { sayLacks } from './say-lacks.ts';
import type { StickTrack, Track } from './track.ts';
import { withoutLosses } from './without-losses.ts';

/** What was found before it is put together. */
interface Found {
  readonly releases: readonly Dwell[];
  readonly still: readonly Dwell[];
  readonly about: Pair;
  readonly ways: Ways;
}

/** Every measure of a log asks for the same. */
const known = new WeakMap<Track, Map<string, StickEvidence>>();

/**
 * From the recorder's capture marks where there are any, else inferred; without the readings in which the signal had left the stick. What
 * cannot be stated is null, with the reason among `lacks`; `releasesNeeded` is what this bench asks for a statement on the rest. A stick
 * that the log has no readings of gives evidence of nothing.
 */
export function gatherEvidence(track: Track, stick: StickId, releasesNeeded = LEAST_RELEASES): StickEvidence {
  const key = `${stick} ${releasesNeeded}`;
  const before = known.get(track)?.get(key);
  if (before !== undefined) return before;
  const evidence = gather(withoutLosses(track), stick, releasesNeeded);
  const of = known.get(track) ?? new Map<string, StickEvidence>();
  known.set(track, of.set(key, evidence));
  return evidence;
}

function gather(track: Track, stick: StickId, releasesNeeded: number): StickEvidence {
  const readings = track.sticks[stick];
  const { from } = findCaptures(track, stick);
  if (readings === undefined || readings.t.length === 0) {
    const fields = readings?.fields ?? track.layout.sticks[stick] ?? NO_FIELDS;
    const lacks = sayLacks(track, stick, null, releasesNeeded);
    return { fields, rest: null, rim: null, captures: from, still: [], releasesNeeded, lacks };
  }
  const found = from === 'marked' ? fromMarks(track, stick, readings) : inferred(track, stick, readings);
  const { pushed, unpushed } = partUnpushed(readings, found.releases, track.gaps);
  const { together, odd } = partOdd(pushed, readings.fields);
  const numbered = odd.map(({ dwell }) => ({ number: found.releases.indexOf(dwell) + 1, dwell }));
  const rest =
    together.length === 0
      ? null
      : {
          dwells: together,
          ...(odd.length > 0 ? { odd: numbered } : {}),
          ...(unpushed.length > 0 ? { unpushed } : {}),
        };
  const rim = rimOf(readings, found.ways, found.about);
  const evidence = { fields: readings.fields, rest, rim, captures: from, still: found.still };
  const lacks = sayLacks(track, stick, evidence, releasesNeeded);
  return { ...evidence, step: effectiveSteps(readings), releasesNeeded, lacks };
}

/** Of a stick that a pad does not have nothing is known; its limits enclose nothing. */
const NO_FIELDS: StickFields = { x: { minimum: 0, maximum: 0, up: 1 }, y: { minimum: 0, maximum: 0, up: -1 } };

function fromMarks(track: Track, stick: StickId, readings: StickTrack): Found {
  const { captures } = findCaptures(track, stick);
  const marks = marksOf(track.marks, stick);
  const rests = captures.filter(({ purpose }) => purpose === 'rest');
  const rims = captures.filter(({ purpose }) => purpose === 'rim');
  const releases = rests.flatMap((span) => markedRest(readings, marks, span, track.gaps));
  const about =
    meanOf(partOdd(releases, readings.fields).together) ??
    middleOfExtents(readings, rims[0]?.startUs ?? 0, rims.at(-1)?.endUs ?? 0) ??
    middleOf(readings.fields);
  const ways = rims.map((span) => markedTurns(readings, marks, span, track.gaps, about));
  return { releases, still: [], about, ways: joinWays(ways) };
}

function inferred(track: Track, stick: StickId, readings: StickTrack): Found {
  const marks = marksOf(track.marks, stick);
  const startUs = firstReleaseUs(marks);
  const endUs = lastUs(track);
  const { releases, still } =
    startUs === null
      ? inferRest(readings, track.gaps, endUs)
      : { releases: markedRest(readings, marks, { purpose: 'rest', startUs, endUs }, track.gaps), still: [] };
  const about =
    meanOf(releases) ??
    meanOf(still) ??
    middleOfExtents(readings, 0, Number.POSITIVE_INFINITY) ??
    middleOf(readings.fields);
  return { releases, still, about, ways: inferredTurns(readings, track.gaps, about) };
}

/** Mean of the rest points: releases, not samples, count alike. */
function meanOf(dwells: readonly Dwell[]): Pair | null {
  if (dwells.length === 0) return null;
  const mean = (axis: 'x' | 'y'): number => dwells.reduce((sum, dwell) => sum + dwell.point[axis], 0) / dwells.length;
  return { x: mean('x'), y: mean('y') };
}
