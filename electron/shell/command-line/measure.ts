/** `measure LOG`: rest and rim of every stick of a report log. */
import { judgeTrack } from '../../../core/findings/judge-track.ts';
import { measureTable } from '../../../core/measure/measure-table.ts';
import { readLog, readMapping } from './log-input.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface MeasureOptions {
  readonly mapping?: string;
}

export async function measureFile(terminal: Terminal, log: string, options: MeasureOptions): Promise<ExitCode> {
  const mapping = await readMapping(options.mapping);
  if (!mapping.ok) return sayProblem(terminal, mapping.problem);
  const track = await readLog(terminal, log);
  if (!track.ok) return sayProblem(terminal, track.problem);
  const report = judgeTrack(track.value, mapping.value);
  await terminal.print(terminal.json ? JSON.stringify(report) : drawSections(measureTable(report)));
  return EXIT.done;
}
