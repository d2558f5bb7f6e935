/** Writes the survey of a draw as a report log, to be opened with the program. */
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { formatGap, formatHeader, formatMark, formatReport } from '../../../core/log/format.ts';
import { takeSurvey } from './survey.ts';
import type { Unit } from './unit.ts';

/** The lines of the log, each with its newline. */
export function linesOf(unit: Unit): string[] {
  const lines: string[] = [];
  takeSurvey(unit, {
    header: (header) => lines.push(formatHeader(header)),
    report: (t, id, bytes) => lines.push(formatReport(t, id, bytes)),
    gap: (t, lost) => lines.push(formatGap(t, lost)),
    mark: ({ t, name, detail }) => lines.push(formatMark(t, name, detail)),
  });
  return lines;
}

export function writeLog(unit: Unit, folder: string, name: string): void {
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, `${name}.padlog`), linesOf(unit).join(''));
}
