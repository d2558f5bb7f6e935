/** Whether a log is all of what was recorded: lines that were damaged, an end that is missing. */
import { sayDamaged } from '../../log/damaged-lines.ts';
import type { Problem } from '../../result.ts';
import type { Track } from './track.ts';

/** The mark that a survey puts behind all else when it is ended in order. */
export const END_MARK = 'end';

/**
 * True where the end mark is there. False where it should be and is not, and where a capture of a log of a program's own was
 * begun last and not ended. Null where nothing can be said: a recording from elsewhere.
 */
export function isEnded({ header, marks }: Pick<Track, 'header' | 'marks'>): boolean | null {
  if (marks.some(({ name }) => name === END_MARK)) return true;
  if (header.endMark === true) return false;
  const last = marks.findLast(({ name }) => name === 'capture');
  return header.program !== null && last?.detail['edge'] === 'begin' ? false : null;
}

/** One sentence for each thing that makes the log less than what was recorded. */
export function sayNotWhole(track: Track): Problem[] {
  const problems: Problem[] = [];
  const damaged = track.damaged === undefined ? null : sayDamaged(track.damaged);
  if (damaged !== null) problems.push({ code: 'log-damaged', says: damaged });
  if (isEnded(track) === false)
    problems.push({
      code: 'log-not-ended',
      says: 'The log lacks its end: the recording broke off or the file was cut, and what came last may be missing; use another copy of the log, or record it again.',
    });
  return problems;
}
