/** A table that a person reads: sections of rows, each a label, a value and its unit. */
export interface TableRow {
  readonly label: string;
  /** A dash where it cannot be stated. */
  readonly value: string;
  readonly unit: string;
}

export interface TableSection {
  readonly title: string;
  readonly rows: readonly TableRow[];
}

export function row(label: string, value: string, unit = ''): TableRow {
  return { label, value, unit };
}
