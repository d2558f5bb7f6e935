/** Whether a log holds anything of a stick of its pad. */
import { markedSpans } from '../capture/evidence/capture-marks.ts';
import { lastUs } from '../capture/evidence/find-captures.ts';
import { gatherEvidence } from '../capture/evidence/gather-evidence.ts';
import type { Track } from '../capture/evidence/track.ts';
import type { StickReport } from '../measure/measure-report.ts';
import { STICKS, type StickId } from '../pad/stick.ts';

type Reports = Readonly<Partial<Record<StickId, StickReport>>>;

/**
 * Why nothing can be said of a stick, in one sentence: no report carries it, or the log was taken for something else, so that
 * nobody let it go or turned it. Null where the pad does not have it, or where something of it was taken or inferred; null too
 * where the log holds nothing of anything, which is no survey of another stick.
 */
export function notSurveyed(track: Track, stick: StickId, reports: Reports): string | null {
  if (reports[stick] === undefined) {
    if (track.layout.sticks[stick] === undefined) return null;
    return gatherEvidence(track, stick).lacks?.[0]?.says ?? null;
  }
  if (isTaken(track, stick, reports[stick])) return null;
  const isOther = STICKS.some(
    (one) => one !== stick && reports[one] !== undefined && isTaken(track, one, reports[one]),
  );
  if (!isOther && !hasInputs(track)) return null;
  return `Nothing of the ${stick} stick was taken in this log; survey it, too.`;
}

function isTaken(track: Track, stick: StickId, { rest, rim, warmUp, disturbance }: StickReport): boolean {
  const isMarked = spansOf(track, stick).some(({ purpose }) => purpose !== 'inputs');
  const turns = rim === null ? 0 : rim.turns.clockwise + rim.turns.counterClockwise;
  return isMarked || (rest?.releases ?? 0) > 0 || turns > 0 || warmUp !== null || disturbance !== null;
}

function hasInputs(track: Track): boolean {
  return STICKS.some((stick) => spansOf(track, stick).some(({ purpose }) => purpose === 'inputs'));
}

function spansOf(track: Track, stick: StickId): ReturnType<typeof markedSpans> {
  return markedSpans(track.marks, stick, lastUs(track));
}
