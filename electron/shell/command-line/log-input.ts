/** A report log and what it is looked at under, as several commands take them. */
import type { Track } from '../../../core/capture/evidence/track.ts';
import { parseMappingFile, type MappingFile } from '../../../core/mapping/mapping-file.ts';
import type { PadMapping } from '../../../core/mapping/mapping.ts';
import { done, type Result } from '../../../core/result.ts';
import type { Terms } from '../../bench/measure/judge-log.ts';
import { openLog } from '../../bench/measure/open-log.ts';
import { readJson } from './input-files.ts';
import { readLimits } from './limits-input.ts';
import type { Terminal } from './terminal.ts';

export interface TermsOptions {
  readonly mapping?: string;
  readonly limits?: string;
}

/** Reads the log; what of it could not be used is said. */
export async function readLog(terminal: Terminal, file: string): Promise<Result<Track>> {
  const opened = await openLog(file);
  if (!opened.ok) return opened;
  for (const note of opened.value.notes) terminal.say(note);
  return done(opened.value.track);
}

/** The mapping and the limits that a log is judged under. */
export async function readTerms(terminal: Terminal, options: TermsOptions): Promise<Result<Terms>> {
  const mapping = await readMappingFile(options.mapping);
  if (!mapping.ok) return mapping;
  const limits = await readLimits(terminal, options.limits);
  return limits.ok ? done({ mapping: mapping.value, limits: limits.value }) : limits;
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
