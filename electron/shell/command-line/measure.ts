/** `measure LOG`: every measure of a report log, findings and verdicts. */
import { findingsTable } from '../../../core/findings/findings-table.ts';
import { measureTable } from '../../../core/measure/measure-table.ts';
import { judgeLog } from '../../bench/measure/judge-log.ts';
import { readGates, type GateOptions } from './gate-input.ts';
import { limitsSections } from './limits-input.ts';
import { readLog, readTerms, type TermsOptions } from './log-input.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export interface MeasureOptions extends TermsOptions, GateOptions {}

export async function measureFile(terminal: Terminal, log: string, options: MeasureOptions): Promise<ExitCode> {
  const terms = await readTerms(terminal, options);
  if (!terms.ok) return sayProblem(terminal, terms.problem);
  const track = await readLog(terminal, log);
  if (!track.ok) return sayProblem(terminal, track.problem);
  const gates = await readGates(terminal, options);
  if (!gates.ok) return sayProblem(terminal, gates.problem);
  const { report } = judgeLog(track.value, { ...terms.value, gates: gates.value });
  const sections = [...measureTable(report), ...findingsTable(report), ...limitsSections(terms.value.limits)];
  await terminal.print(terminal.json ? JSON.stringify(report) : drawSections(sections));
  return EXIT.done;
}
