import { drawnCell, type Table } from '../../../renderer/kit/figures/table.ts';

/** The rows of a table as they are seen. */
export function drawnRows({ rows }: Table): string[][] {
  return rows.map((row) => row.map(drawnCell));
}
