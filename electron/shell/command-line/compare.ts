/** `compare LOG LOG`: what changed between two surveys of one pad, beyond what surveying alone explains. */
import { sayLimits } from '../../../core/findings/judge-track.ts';
import type { SurveyDifference } from '../../../core/measure/compare-surveys.ts';
import { formatQuantity, NOTHING } from '../../../core/measure/format-quantity.ts';
import { STUDIED_WORDS } from '../../../core/measure/studied-words.ts';
import { row } from '../../../core/measure/table.ts';
import { compareTwoLogs } from '../../bench/measure/log-answers.ts';
import { limitsSections } from './limits-input.ts';
import { readLog, readTerms, type TermsOptions } from './log-input.ts';
import { outputHead } from './output.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export async function compareLogs(
  terminal: Terminal,
  options: TermsOptions,
  first: string,
  second: string,
): Promise<ExitCode> {
  const terms = await readTerms(terminal, options);
  if (!terms.ok) return sayProblem(terminal, terms.problem);
  const before = await readLog(terminal, first);
  if (!before.ok) return sayProblem(terminal, before.problem);
  const after = await readLog(terminal, second);
  if (!after.ok) return sayProblem(terminal, after.problem);
  const sticks = compareTwoLogs(before.value, after.value, terms.value);
  const { limits } = terms.value;
  await terminal.print(
    terminal.json
      ? JSON.stringify({
          ...outputHead('comparison'),
          limits: sayLimits(limits, ['releases']),
          sticks: Object.fromEntries(sticks),
        })
      : drawSections([
          ...sticks.map(([stick, items]) => ({ title: `${stick} stick`, rows: items.map(rowOf) })),
          ...limitsSections(limits, ['releases']),
        ]),
  );
  return EXIT.done;
}

function rowOf({ measure, first, second, limit, differs }: SurveyDifference) {
  const digits = measure === 'skew' || limit < 0.1 ? 4 : 2;
  const number = (value: number | null): string => formatQuantity(value, null, digits);
  const verdict = differs === null ? NOTHING : differs ? 'differs' : 'the same';
  const { says, unit } = STUDIED_WORDS[measure];
  const label = unit === 'counts' || unit === 'degrees' ? `${says}, ${unit}` : says;
  return row(label, `${number(first)} → ${number(second)}`, `${verdict} (limit ${number(limit)})`);
}
