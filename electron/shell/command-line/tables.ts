/** Tables a person reads: thin, without colours, numbers to the right. */
import Table from 'cli-table3';

export type Cell = string | number | null | undefined;

export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
}

/** A table with a rule under its head; what is not known is a dash. */
export function drawTable(columns: readonly Column[], rows: readonly (readonly Cell[])[]): string {
  const table = new Table({
    head: columns.map(({ head }) => head),
    colAligns: columns.map(({ align = 'left' }) => align),
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 2 },
    chars: {
      top: '',
      'top-mid': '',
      'top-left': '',
      'top-right': '',
      bottom: '',
      'bottom-mid': '',
      'bottom-left': '',
      'bottom-right': '',
      left: '',
      'left-mid': '',
      mid: '',
      'mid-mid': '',
      right: '',
      'right-mid': '',
      middle: '',
    },
  });
  table.push(...rows.map((row) => row.map(cellText)));
  return table
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n');
}

/** Name and value of one thing, a line each. */
export function drawList(title: string, rows: readonly (readonly [string, Cell])[]): string {
  const width = Math.max(...rows.map(([name]) => name.length));
  return [title, ...rows.map(([name, value]) => `  ${name.padEnd(width)}  ${cellText(value)}`)].join('\n');
}

function cellText(cell: Cell): string {
  return cell === null || cell === undefined ? '–' : String(cell);
}

/** A number with so many decimals; null stays null, for a dash. */
export function decimals(value: number | null | undefined, places: number): string | null {
  return value === null || value === undefined ? null : value.toFixed(places);
}

/** A fraction in percent. */
export function percent(value: number | null | undefined, places = 1): string | null {
  return value === null || value === undefined ? null : `${(100 * value).toFixed(places)} %`;
}

/** Two numbers of one thing, x and y. */
export function pair(value: { x: number | null; y: number | null } | null | undefined, places: number): string | null {
  if (value === null || value === undefined) return null;
  return `${cellText(decimals(value.x, places))}  ${cellText(decimals(value.y, places))}`;
}
