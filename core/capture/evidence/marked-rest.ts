/** Takes the dwells of a marked rest capture. */
import type { Mark } from '../../log/visitor.ts';
import type { Pair } from '../../pad/stick.ts';
import { markedDwells, repeatsOf, timesOf, withoutRepeated, type MarkedSpan } from './capture-marks.ts';
import { describeDwell } from './describe-dwell.ts';
import type { Dwell } from './evidence.ts';
import { indexAt } from './find-index.ts';
import { mainRest, tiltBetween } from './main-rest.ts';
import { findStillSpans, type StillSpan } from './still-spans.ts';
import type { StickTrack, Track } from './track.ts';

/** A stick that came back less than half the way was not let go, or is being pushed again. */
const RETURN_SHARE = 0.5;
/** The tilt that is taken for granted where the mark was set after the return. */
const USUAL_TILT = 0.5;

/**
 * Dwells as marked where any are; else the first settled stretch of 500 ms after each release mark, up to the next
 * release. `marks` are those of the stick. A dwell in which a button was down is not counted; `repeat` drops the last.
 */
export function markedRest(track: StickTrack, marks: readonly Mark[], span: MarkedSpan, gaps: Track['gaps']): Dwell[] {
  const marked = markedDwells(marks, span).filter((dwell) => holdsReading(track, dwell));
  const hasDwellMarks = marks.some(({ name, t }) => name === 'dwell' && t >= span.startUs && t <= span.endUs);
  const dwells = hasDwellMarks
    ? marked.filter((dwell) => !isButtonDown(track, dwell)).map((dwell) => describeDwell(track, dwell))
    : foundDwells(track, timesOf(marks, 'release', span), span, gaps);
  return withoutRepeated(dwells, repeatsOf(marks, 'release', span), ({ endUs }) => endUs);
}

function foundDwells(track: StickTrack, releases: readonly number[], span: MarkedSpan, gaps: Track['gaps']): Dwell[] {
  const found = releases.map((release, i) => ({
    release,
    dwells: findStillSpans(track, release, releases[i + 1] ?? span.endUs, gaps).map((still) =>
      describeDwell(track, still),
    ),
  }));
  const rest = mainRest(
    found.flatMap(({ dwells }) => dwells.map((dwell) => dwell.point)),
    track.fields,
  );
  if (rest === null) return [];
  return found.flatMap(({ release, dwells }) => {
    const tilt = Math.max(USUAL_TILT, tiltBetween(track.fields, rest, placeAt(track, release)));
    return dwells.find(({ point }) => tiltBetween(track.fields, rest, point) <= RETURN_SHARE * tilt) ?? [];
  });
}

function holdsReading(track: StickTrack, { endUs }: StillSpan): boolean {
  return indexAt(track.t, endUs) > 0;
}

function isButtonDown(track: StickTrack, { startUs, endUs }: StillSpan): boolean {
  const end = indexAt(track.t, endUs);
  for (let i = Math.max(0, indexAt(track.t, startUs) - 1); i < end; i += 1) if (track.buttonDown[i] === 1) return true;
  return false;
}

/** The reading held at a time, as raw counts. */
function placeAt(track: StickTrack, t: number): Pair {
  const i = Math.max(0, indexAt(track.t, t + 1) - 1);
  return { x: track.x[i] ?? Number.NaN, y: track.y[i] ?? Number.NaN };
}
