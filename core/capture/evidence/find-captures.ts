/** Finds the spans of a log that were taken for a purpose. */
import type { StickId } from '../../pad/stick.ts';
import { firstReleaseUs, hasCaptureMarks, markedSpans, marksOf, type MarkedSpan } from './capture-marks.ts';
import { indexAt } from './find-index.ts';
import type { Capture, Track } from './track.ts';

export interface Captures {
  readonly captures: readonly Capture[];
  readonly from: 'marked' | 'inferred';
}

/**
 * Captures of one stick from the recorder's capture marks. Without any, the whole log is looked at, as one capture for
 * rest and one for the rim; releases or dwells that are marked all the same are taken at their word.
 */
export function findCaptures(track: Track, stick: StickId): Captures {
  const endUs = lastUs(track);
  const marks = marksOf(track.marks, stick);
  if (hasCaptureMarks(marks))
    return {
      captures: markedSpans(track.marks, stick, endUs).map((span) => toCapture(track, stick, span)),
      from: 'marked',
    };
  const spans: readonly MarkedSpan[] = [
    { purpose: 'rest', startUs: firstReleaseUs(marks) ?? 0, endUs },
    { purpose: 'rim', startUs: 0, endUs },
  ];
  return { captures: spans.map((span) => toCapture(track, stick, span)), from: 'inferred' };
}

/** Time of the last entry of a log: to it the last reading of a pad that reports only changes is known to have held. */
export function lastUs(track: Track): number {
  return Math.max(0, track.reportTimes.at(-1) ?? 0, track.marks.at(-1)?.t ?? 0, track.gaps.at(-1)?.t ?? 0);
}

function toCapture(track: Track, stick: StickId, span: MarkedSpan): Capture {
  const times = track.sticks[stick]?.t ?? new Float64Array(0);
  return { ...span, stick, from: indexAt(times, span.startUs), to: indexAt(times, span.endUs + 1) };
}
