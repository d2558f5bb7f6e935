import type { Tone } from '../../../core/plot/figure.ts';

/** A number of a table: as it is kept in a file, and as it is drawn. */
export interface NumberCell {
  /** At full precision; null where it is not known. Shares are fractions. */
  readonly value: number | null;
  readonly drawn: string;
  /** The value stands at a limit that hides more. */
  readonly atLeast?: true;
}

/** Words, with what goes with them or what they mean. */
export interface WordsCell {
  readonly says: string;
  /** In small letters: an uncertainty, a direction, where it is from. */
  readonly beside?: string;
  readonly definition?: string;
}

export type Cell = string | NumberCell | WordsCell;

/** The head of a column, and how the column is drawn: as numbers, to the right on one line, unless it says otherwise. */
export interface Head {
  readonly says: string;
  /** For those who listen, and for a file. */
  readonly spoken?: true;
  readonly title?: string;
  readonly definition?: string;
  /** Words begin at the left; many of them may take several lines, digits without a gap be broken anywhere. */
  readonly words?: true;
  /** Goes with the column before it. */
  readonly near?: true;
  readonly wraps?: true | 'anywhere';
  readonly width?: string;
  /** No wider than this: what is longer is cut on the page, not in a file. */
  readonly most?: string;
  readonly tone?: Tone | 'soft';
  /** What is asked for now. */
  readonly current?: boolean;
}

/** Heads and rows of text and numbers: the twin of a figure, or what a panel shows. */
export interface Table {
  /** What the table is, for those who listen. */
  readonly caption: string;
  readonly heads: readonly (string | Head)[];
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

export function headOf(head: string | Head): Head {
  return typeof head === 'string' ? { says: head } : head;
}

export function drawnCell(cell: Cell): string {
  if (typeof cell === 'string') return cell;
  return 'says' in cell ? cell.says : `${cell.atLeast === true ? '≥ ' : ''}${cell.drawn}`;
}
