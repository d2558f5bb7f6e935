/** `compare LOG LOG`: what changed between two surveys of one pad, beyond what surveying alone explains. */
import { compareSurveys, type SurveyDifference } from '../../../core/measure/compare-surveys.ts';
import { formatQuantity, NOTHING } from '../../../core/measure/format-quantity.ts';
import { measureTrack } from '../../../core/measure/measure-report.ts';
import { STUDIED_WORDS } from '../../../core/measure/studied-words.ts';
import { row } from '../../../core/measure/table.ts';
import { STICKS } from '../../../core/pad/stick.ts';
import { readLog, readMapping } from './log-input.ts';
import { outputHead } from './output.ts';
import { drawSections } from './tables.ts';
import { EXIT, sayProblem, type ExitCode, type Terminal } from './terminal.ts';

export async function compareLogs(
  terminal: Terminal,
  options: { readonly mapping?: string },
  first: string,
  second: string,
): Promise<ExitCode> {
  const mapping = await readMapping(options.mapping);
  if (!mapping.ok) return sayProblem(terminal, mapping.problem);
  const before = await readLog(terminal, first);
  if (!before.ok) return sayProblem(terminal, before.problem);
  const after = await readLog(terminal, second);
  if (!after.ok) return sayProblem(terminal, after.problem);
  const [one, other] = [measureTrack(before.value, mapping.value), measureTrack(after.value, mapping.value)];
  const sticks = STICKS.flatMap((stick) => {
    const [a, b] = [one.sticks[stick], other.sticks[stick]];
    return a === undefined || b === undefined ? [] : [[stick, compareSurveys(a, b)] as const];
  });
  await terminal.print(
    terminal.json
      ? JSON.stringify({ ...outputHead('comparison'), sticks: Object.fromEntries(sticks) })
      : drawSections(sticks.map(([stick, items]) => ({ title: `${stick} stick`, rows: items.map(rowOf) }))),
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
