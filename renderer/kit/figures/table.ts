/** The table twin of a figure: heads and rows of text. */
export interface Table {
  /** What the table is, for those who listen. */
  readonly caption: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** Index of the row that stands for the selected direction, or null. */
  readonly selected: number | null;
}
