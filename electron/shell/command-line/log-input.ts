/** A report log and the mapping it is looked at under, as several commands take them. */
import type { Track } from '../../../core/capture/track.ts';
import { parseMappingFile, type MappingFile } from '../../../core/mapping/mapping-file.ts';
import type { PadMapping } from '../../../core/mapping/mapping.ts';
import { done, failed, type Result } from '../../../core/result.ts';
import { readTrack } from '../../bench/read-track.ts';
import { readJson } from './input-files.ts';
import type { Terminal } from './terminal.ts';

/** Reads the log; that it is cut off is said, for what is whole is used. */
export async function readLog(terminal: Terminal, file: string): Promise<Result<Track>> {
  const read = await readTrack(file);
  if (!read.ok) return read;
  const { track, cut } = read.value;
  if (cut) terminal.say(`${file} ends inside a line; everything before it is used.`);
  const { reports = 0, first = null } = track.unread ?? {};
  if (first !== null) terminal.say(`${reports} reports could not be read. ${first.says}`);
  if (track.reportTimes.length === 0)
    return failed('log-no-report', 'The log holds no report; record one with a pad that sends.');
  if (Object.keys(track.sticks).length > 0) return done(track);
  return failed('log-no-stick', track.layout.noSticks ?? 'The log has no reading of a stick; record one from a pad.');
}

/** The mappings of a mapping file, or null where none is given. */
export async function readMapping(file: string | undefined): Promise<Result<PadMapping | null>> {
  const read = await readMappingFile(file);
  return read.ok ? done(read.value?.sticks ?? null) : read;
}

/** The whole mapping file, with the pad that it says it is of; null where none is given. */
export async function readMappingFile(file: string | undefined): Promise<Result<MappingFile | null>> {
  if (file === undefined) return done(null);
  const json = await readJson(file);
  return json.ok ? parseMappingFile(json.value) : json;
}
