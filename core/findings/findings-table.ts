/** Findings and verdicts as `measure` shows them without `--json`. */
import { formatQuantity, NOTHING } from '../measure/format-quantity.ts';
import { row, type TableRow, type TableSection } from '../measure/table.ts';
import { STICKS } from '../pad/stick.ts';
import type { Finding } from './finding.ts';
import type { MeasureReport } from './judge-track.ts';

/** The verdicts with their reasons, then what failed or could not be told with its evidence, then what passed in one line each. */
export function findingsTable({ findings, verdict, verdictWhy }: MeasureReport): TableSection[] {
  const verdicts = STICKS.flatMap((stick) => {
    const word = verdict[stick];
    return word === undefined ? [] : [row(`${stick} stick`, `${word}: ${verdictWhy[stick] ?? NOTHING}`)];
  });
  const open = findings.filter(({ decision }) => decision !== 'pass');
  const passed = findings.filter(({ decision }) => decision === 'pass');
  return [
    { title: 'verdict', rows: verdicts },
    ...open.map((finding) => ({ title: titleOf(finding), rows: openRows(finding) })),
    { title: 'findings that pass', rows: passed.map((finding) => row(titleOf(finding), finding.says)) },
  ].filter(({ rows }) => rows.length > 0);
}

function titleOf({ id, stick, decision, severity }: Finding): string {
  const name = `${stick === null ? 'pad' : `${stick} stick`}, ${id.replaceAll('-', ' ')}`;
  if (decision === 'pass') return name;
  return `${name}: ${decision === 'fail' ? severity : decision}`;
}

/** A number that was counted has no uncertainty and no decimals. */
function valueText(value: number | null, u95: number | null): string {
  return u95 === 0 ? formatQuantity(value, null, Number.isInteger(value) ? 0 : 3) : formatQuantity(value, u95, 3);
}

function openRows(finding: Finding): TableRow[] {
  const { value, u95, unit, limit, limitFrom } = finding;
  const rows = [
    row('says', finding.says),
    row('value', valueText(value, u95), unit),
    row('limit', limit === null ? NOTHING : String(limit), limitFrom),
  ];
  for (const line of finding.for) rows.push(row('for', line));
  for (const line of finding.against) rows.push(row('against', line));
  for (const line of finding.causes) rows.push(row('cause', line));
  return [...rows, row('next', finding.next)];
}
