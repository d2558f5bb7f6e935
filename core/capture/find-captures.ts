/** Finds the spans of a log that were taken for a purpose. */
import type { StickId } from '../pad/stick.ts';
import { isMarked, markedSpans, marksOf, type MarkedSpan } from './capture-marks.ts';
import { indexAt } from './find-index.ts';
import type { Capture, Track } from './track.ts';

export interface Captures {
  readonly captures: readonly Capture[];
  readonly from: 'marked' | 'inferred';
}

/**
 * Captures of one stick from the recorder's marks. Where only releases or dwells are marked, the log from the first of
 * them on is one rest capture. Without marks the whole log is looked at, as one capture for rest and one for the rim.
 */
export function findCaptures(track: Track, stick: StickId): Captures {
  const endUs = lastUs(track);
  const marks = marksOf(track.marks, stick);
  if (!isMarked(marks))
    return {
      captures: (['rest', 'rim'] as const).map((purpose) => toCapture(track, stick, { purpose, startUs: 0, endUs })),
      from: 'inferred',
    };
  const spans = markedSpans(track.marks, stick, endUs);
  const first = marks.find(({ name }) => name === 'release' || name === 'dwell');
  if (!marks.some(({ name }) => name === 'capture') && first !== undefined)
    spans.push({ purpose: 'rest', startUs: first.t, endUs });
  return { captures: spans.map((span) => toCapture(track, stick, span)), from: 'marked' };
}

/** Time of the last entry of a log: to it the last reading of a pad that reports only changes is known to have held. */
export function lastUs(track: Track): number {
  return Math.max(0, track.reportTimes.at(-1) ?? 0, track.marks.at(-1)?.t ?? 0, track.gaps.at(-1)?.t ?? 0);
}

function toCapture(track: Track, stick: StickId, span: MarkedSpan): Capture {
  const times = track.sticks[stick]?.t ?? new Float64Array(0);
  return { ...span, stick, from: indexAt(times, span.startUs), to: indexAt(times, span.endUs + 1) };
}
