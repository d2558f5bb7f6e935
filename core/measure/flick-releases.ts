/** When a stick was let go in captures taken for flicks. */
import {
  markedSpans,
  marksOf,
  repeatsOf,
  timesOf,
  withoutRepeated,
  type MarkedSpan,
} from '../capture/evidence/capture-marks.ts';
import { lastUs } from '../capture/evidence/find-captures.ts';
import { FlickWatch, PUSH_SHARE } from '../capture/evidence/flick-watch.ts';
import { tiltOf } from '../capture/evidence/describe-dwell.ts';
import { indexAt } from '../capture/evidence/find-index.ts';
import type { StickTrack, Track } from '../capture/evidence/track.ts';
import type { Pair, StickId } from '../pad/stick.ts';

/** A release, and until when what follows belongs to it: the next prompt or release, or the end of the capture. */
export interface Release {
  readonly t: number;
  readonly untilUs: number;
}

/**
 * At each `release` mark that no `repeat` took back; in a capture without any, wherever the stick comes back from full tilt as
 * fast as a free stick does.
 */
export function flickReleases(track: Track, stick: StickId, readings: StickTrack, rest: Pair): Release[] {
  const marks = marksOf(track.marks, stick);
  return markedSpans(track.marks, stick, lastUs(track))
    .filter(({ purpose }) => purpose === 'flick')
    .flatMap((span) => {
      const marked = timesOf(marks, 'release', span);
      const times = marked.length > 0 ? marked : seenReleases(readings, span, rest);
      const ends = [...times, ...timesOf(marks, 'toward', span), ...timesOf(marks, 'repeat', span), span.endUs];
      const repeats = marked.length > 0 ? repeatsOf(marks, 'flick', span) : [];
      return withoutRepeated(times, repeats, (t) => t).map((t) => ({
        t,
        untilUs: Math.min(...ends.filter((end) => end > t), span.endUs),
      }));
    });
}

function seenReleases({ t, x, y, fields }: StickTrack, span: MarkedSpan, rest: Pair): number[] {
  const times: number[] = [];
  let watch: FlickWatch | null = null;
  const end = indexAt(t, span.endUs);
  for (let i = indexAt(t, span.startUs); i < end; i += 1) {
    const tilt = { x: (x[i] ?? Number.NaN) - rest.x, y: (y[i] ?? Number.NaN) - rest.y };
    const share = tiltOf(fields, tilt);
    if (watch === null && share < PUSH_SHARE) watch = new FlickWatch(null, null);
    if (watch === null) continue;
    watch.sample(t[i] ?? Number.NaN, inShares(tilt, share), false);
    if (!watch.isReleased) continue;
    if (watch.fault === null) times.push(t[i] ?? Number.NaN);
    watch = null;
  }
  return times;
}

/** As long as its share of the half range. */
function inShares({ x, y }: Pair, share: number): Pair {
  const length = Math.hypot(x, y);
  return length === 0 ? { x: 0, y: 0 } : { x: (share * x) / length, y: (share * y) / length };
}
