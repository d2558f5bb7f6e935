/** Tables a person reads: thin, without colours. */
import Table from 'cli-table3';
import type { TableSection } from '../../../core/measure/table.ts';

export type Cell = string | number | null | undefined;

export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
}

const NO_LINES = {
  top: '', 'top-mid': '', 'top-left': '', 'top-right': '',
  bottom: '', 'bottom-mid': '', 'bottom-left': '', 'bottom-right': '',
  left: '', 'left-mid': '', mid: '', 'mid-mid': '', right: '', 'right-mid': '', middle: '',
}; // prettier-ignore

/** Columns under their heads; what is not known is a dash. */
export function drawTable(columns: readonly Column[], rows: readonly (readonly Cell[])[]): string {
  const table = new Table({
    head: columns.map(({ head }) => head),
    colAligns: columns.map(({ align = 'left' }) => align),
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 2 },
    chars: NO_LINES,
  });
  table.push(...rows.map((row) => row.map((cell) => (cell === null || cell === undefined ? '–' : String(cell)))));
  return trimLines(table.toString());
}

/** Each section under its title: labels, values and their units. */
export function drawSections(sections: readonly TableSection[]): string {
  const label = Math.max(0, ...sections.flatMap(({ rows }) => rows.map((row) => row.label.length)));
  const value = Math.max(
    0,
    ...sections.flatMap(({ rows }) => rows.map((row) => (row.unit === '' ? 0 : row.value.length))),
  );
  const drawn = sections.map(({ title, rows }) =>
    [title, ...rows.map((row) => `  ${row.label.padEnd(label)}  ${row.value.padEnd(value)}  ${row.unit}`)].join('\n'),
  );
  return trimLines(drawn.join('\n\n'));
}

function trimLines(text: string): string {
  return text
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n');
}
