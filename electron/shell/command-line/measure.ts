/** `measure LOG`: every measure of a report log, findings and verdicts. */
import { findingsTable } from '../../../core/findings/findings-table.ts';
import { judgeTrack } from '../../../core/findings/judge-track.ts';
import { defaultLimits } from '../../../core/findings/limits.ts';
import { measureTable } from '../../../core/measure/measure-table.ts';
import { readLog, readMappingFile } from './log-input.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface MeasureOptions {
  readonly mapping?: string;
}

export async function measureFile(terminal: Terminal, log: string, options: MeasureOptions): Promise<ExitCode> {
  const mapping = await readMappingFile(options.mapping);
  if (!mapping.ok) return sayProblem(terminal, mapping.problem);
  const track = await readLog(terminal, log);
  if (!track.ok) return sayProblem(terminal, track.problem);
  const { sticks = null, pad = null } = mapping.value ?? {};
  const report = judgeTrack(track.value, sticks, defaultLimits, pad);
  await terminal.print(
    terminal.json ? JSON.stringify(report) : drawSections([...measureTable(report), ...findingsTable(report)]),
  );
  return EXIT.done;
}
