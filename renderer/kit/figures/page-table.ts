/** A table as it stands on the page, as rows of text. */
import type { Table } from './table.ts';

/** All tables inside of a box; a definition that waits for hover or key, and a sign beside a word, are no part of a cell. */
export function tablesOf(box: Element, caption: string): Table[] {
  return [...box.querySelectorAll('table')].map((table) => {
    const [heads = [], ...rows] = [...table.rows].map((row) => [...row.cells].flatMap(textsOf));
    return { caption: table.caption?.textContent.trim() ?? caption, heads, rows, selected: null };
  });
}

/** What stands in a cell; further columns that it spans stay empty. */
function textsOf(cell: HTMLTableCellElement): string[] {
  const copy = cell.cloneNode(true) as HTMLTableCellElement;
  // What stands in a field is a value, not text; the copy has it only as it was at first.
  const fields = [...cell.querySelectorAll('input')].map(({ value }) => value);
  copy.querySelectorAll('input').forEach((field, index) => field.replaceWith(fields[index] ?? ''));
  for (const aside of copy.querySelectorAll('[role="tooltip"], [aria-hidden="true"]')) aside.remove();
  // Two lines of a cell are two words.
  for (const part of copy.querySelectorAll('*')) part.append(' ');
  const text = copy.textContent.replaceAll(/\s+/gu, ' ').trim();
  return [text, ...Array.from({ length: Math.max(0, cell.colSpan - 1) }, () => '')];
}
