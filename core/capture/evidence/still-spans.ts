/** Finds the settled stretches of a stick in a span of its track. */
import { SettleDetector } from './settle-detector.ts';
import { indexAt } from './find-index.ts';
import type { StickTrack } from './track.ts';

/** A settled stretch, in microseconds. */
export interface StillSpan {
  readonly startUs: number;
  readonly endUs: number;
}

/** How long a stick must stay settled, by definition. */
export const DWELL_US = 500_000;

/** Between readings so far apart a gap hides what the stick did. */
export const GAP_US = 50_000;

/**
 * Settled stretches of at least 500 ms that lie in `startUs` … `endUs`, in order. Nothing before `startUs` counts
 * towards settling; the reading held at `startUs` does. `gaps` are the times of lost reports.
 */
export function findStillSpans(
  track: StickTrack,
  startUs: number,
  endUs: number,
  gaps: readonly { readonly t: number }[],
): StillSpan[] {
  const spans: StillSpan[] = [];
  let since: number | null = null;
  // Up to here the reading held is known to hold: what reports were lost might have said otherwise.
  let knownUs = Number.POSITIVE_INFINITY;
  const close = (to: number): void => {
    const end = Math.min(to, knownUs);
    if (since !== null && end - since >= DWELL_US) spans.push({ startUs: since, endUs: end });
    since = null;
  };
  const detector = new SettleDetector(track.fields, { settled: (at) => (since = at), moved: close });
  const { t, x, y, buttonDown } = track;
  let i = Math.max(0, indexAt(t, startUs) - 1);
  let nextGap = gaps.findIndex((gap) => gap.t >= startUs);
  const isLostBefore = (at: number): boolean => {
    const from = nextGap;
    while (nextGap >= 0 && nextGap < gaps.length && (gaps[nextGap]?.t ?? 0) <= at) nextGap += 1;
    return nextGap > from && at - (t[i - 1] ?? at) > GAP_US;
  };
  for (; i < t.length && (t[i] ?? 0) < endUs; i += 1) {
    const at = Math.max(startUs, t[i] ?? 0);
    if (isLostBefore(at)) {
      knownUs = t[i - 1] ?? at;
      detector.break(at);
      knownUs = Number.POSITIVE_INFINITY;
    }
    detector.reading(at, x[i] ?? Number.NaN, y[i] ?? Number.NaN, buttonDown[i] === 1);
  }
  if (isLostBefore(t[i] ?? endUs)) knownUs = t[i - 1] ?? endUs;
  detector.advance(endUs);
  close(endUs);
  return spans;
}
