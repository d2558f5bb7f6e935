/** Finds releases in a log without capture marks. */
import type { Pair } from '../../pad/stick.ts';
import { describeDwell, TILT_SHARE } from './describe-dwell.ts';
import type { Dwell } from './evidence.ts';
import { indexAt } from './find-index.ts';
import { mainRest, middleOf, REST_SHARE, tiltBetween } from './main-rest.ts';
import { findStillSpans, type StillSpan } from './still-spans.ts';
import type { StickTrack, Track } from './track.ts';

/** Farther from the middle than this, a still stick is at rest only where it was also seen well beyond. */
const FAR_SHARE = 0.3;
/** Longest part of a still stretch that is looked at, so that a pad laid down for an hour stays small. */
const LONGEST_US = 10_000_000;

interface InferredRest {
  /** Still stretches that follow a push and a return: releases. */
  readonly releases: readonly Dwell[];
  /** Still stretches at the rest that follow no release, e.g. at the beginning. */
  readonly still: readonly Dwell[];
}

/**
 * Candidates are settled stretches of 500 ms with no button down. Of these the ones within a tenth of the half range
 * about the main rest are at rest: a stick held at the gate or at a tilt is not. A release is one at rest before which,
 * since the last candidate, the stick was tilted by at least 15 % of the half range.
 */
export function inferRest(track: StickTrack, gaps: Track['gaps'], endUs: number): InferredRest {
  const spans = findStillSpans(track, track.t[0] ?? 0, endUs, gaps);
  const candidates = spans.map((span) => ({
    span,
    dwell: describeDwell(track, { startUs: span.startUs, endUs: Math.min(span.endUs, span.startUs + LONGEST_US) }),
  }));
  const places = candidates.map(({ dwell }) => dwell.point).filter((place) => isInside(track, place));
  const rest = mainRest(places, track.fields);
  const releases: Dwell[] = [];
  const still: Dwell[] = [];
  candidates.forEach(({ span, dwell }, i) => {
    if (rest === null || tiltBetween(track.fields, rest, dwell.point) > REST_SHARE) return;
    const before = candidates[i - 1]?.span.endUs ?? track.t[0] ?? 0;
    if (wasTilted(track, { startUs: before, endUs: span.startUs }, dwell.point)) releases.push(dwell);
    else still.push({ ...dwell, from: null });
  });
  return { releases, still };
}

function wasTilted(track: StickTrack, between: StillSpan, rest: Pair): boolean {
  const end = indexAt(track.t, between.endUs);
  for (let i = indexAt(track.t, between.startUs); i < end; i += 1)
    if (tiltBetween(track.fields, rest, readingAt(track, i)) >= TILT_SHARE) return true;
  return false;
}

/** Nothing lies beyond a stick that is held against its gate; beyond a rest far off the middle there is travel. */
function isInside(track: StickTrack, place: Pair): boolean {
  const middle = middleOf(track.fields);
  const off = tiltBetween(track.fields, middle, place);
  if (off <= FAR_SHARE) return true;
  for (let i = 0; i < track.t.length; i += 1) {
    const reading = readingAt(track, i);
    const dx = (place.x - middle.x) / (track.fields.x.maximum - middle.x);
    const dy = (place.y - middle.y) / (track.fields.y.maximum - middle.y);
    const beyond =
      (dx * (reading.x - place.x)) / (track.fields.x.maximum - middle.x) +
      (dy * (reading.y - place.y)) / (track.fields.y.maximum - middle.y);
    if (beyond / off >= TILT_SHARE) return true;
  }
  return false;
}

function readingAt(track: StickTrack, i: number): Pair {
  return { x: track.x[i] ?? Number.NaN, y: track.y[i] ?? Number.NaN };
}
