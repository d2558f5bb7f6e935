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
  const repeated = track.repeated ?? 0;
  if (repeated > 0) problems.push({ code: 'log-repeated', says: sayRepeated(repeated) });
  if (isEnded(track) === false)
    problems.push({
      code: 'log-not-ended',
      says: 'The log lacks its end: the recording broke off or the file was cut, and what came last may be missing; use another copy of the log, or record it again.',
    });
  return problems;
}

function sayRepeated(lines: number): string {
  const stand = lines === 1 ? '1 line of the log stands' : `${lines} lines of the log stand`;
  return `${stand} there twice, of the same microsecond, and ${lines === 1 ? 'counts' : 'count'} once: the file was changed; use another copy of the log, or record it again.`;
}

/** Null where every report that should carry a reading was read. */
export function sayUnreadReports({ unread }: Pick<Track, 'unread'>): Problem | null {
  const { reports = 0, first = null } = unread ?? {};
  if (first === null) return null;
  const count = reports === 1 ? '1 report' : `${reports} reports`;
  return {
    code: 'reports-unread',
    says: `${count} could not be read and ${reports === 1 ? 'is' : 'are'} left out. ${first.says}`,
  };
}
