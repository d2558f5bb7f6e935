/** A report log from its file, as the command line looks at it: with a reading of a stick, and with what has to be told. */
import { sayNotWhole, sayUnreadReports } from '../../../core/capture/evidence/log-whole.ts';
import type { Track } from '../../../core/capture/evidence/track.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { readTrack } from './read-track.ts';

export interface OpenedLog {
  readonly track: Track;
  /** One sentence each: what of the log could not be used. */
  readonly notes: readonly string[];
}

/** What is whole of a log that was cut off is used, and that it was is said. */
export async function openLog(file: string): Promise<Result<OpenedLog>> {
  const read = await readTrack(file);
  if (!read.ok) return read;
  const { track, cut } = read.value;
  const notes = cut ? [`${file} ends inside a line; everything before it is used.`] : [];
  notes.push(...sayNotWhole(track).map(({ says }) => says));
  const unread = sayUnreadReports(track);
  if (unread !== null) notes.push(unread.says);
  if (track.reportTimes.length === 0)
    return failed('log-no-report', 'The log holds no report; record one with a pad that sends.');
  if (Object.keys(track.sticks).length === 0)
    return failed('log-no-stick', track.layout.noSticks ?? 'The log has no reading of a stick; record one from a pad.');
  return done({ track, notes });
}
