/** `measure LOG`: every measure of a report log, findings and verdicts. */
import { findingsTable } from '../../../core/findings/findings-table.ts';
import { measureTable } from '../../../core/measure/measure-table.ts';
import { judgeLog } from '../../bench/measure/judge-log.ts';
import { limitsSections } from './limits-input.ts';
import { readLog, readTerms, type TermsOptions } from './log-input.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export type MeasureOptions = TermsOptions;

export async function measureFile(terminal: Terminal, log: string, options: MeasureOptions): Promise<ExitCode> {
  const terms = await readTerms(terminal, options);
  if (!terms.ok) return sayProblem(terminal, terms.problem);
  const track = await readLog(terminal, log);
  if (!track.ok) return sayProblem(terminal, track.problem);
  const { report } = judgeLog(track.value, terms.value);
  const sections = [...measureTable(report), ...findingsTable(report), ...limitsSections(terms.value.limits)];
  await terminal.print(terminal.json ? JSON.stringify(report) : drawSections(sections));
  return EXIT.done;
}
