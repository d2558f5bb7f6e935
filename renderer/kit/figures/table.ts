/** A number of a table: as it is kept in a file, and as it is drawn. */
export interface NumberCell {
  /** At full precision; null where it is not known. Shares are fractions. */
  readonly value: number | null;
  readonly drawn: string;
  /** The value stands at a limit that hides more. */
  readonly atLeast?: true;
}

export type Cell = string | NumberCell;

/** The table twin of a figure: heads and rows of text and numbers. */
export interface Table {
  /** What the table is, for those who listen. */
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** Index of the row that stands for the selected direction, or null. */
  readonly selected: number | null;
}

/** What is not known, or is no number, is a dash. */
export function numberCell(value: number | null | undefined, draw: (value: number) => string): NumberCell {
  return value === null || value === undefined || !Number.isFinite(value)
    ? { value: null, drawn: '—' }
    : { value, drawn: draw(value) };
}

export function drawnCell(cell: Cell): string {
  return typeof cell === 'string' ? cell : `${cell.atLeast === true ? '≥ ' : ''}${cell.drawn}`;
}
