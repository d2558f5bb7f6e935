/** Table twins as CSV (RFC 4180). */
import { NARROW } from '../../../core/plot/number-text.ts';
import { headOf, type Cell, type Table } from './table.ts';

/** Several tables stand below each other, each under its caption, with an empty line between. */
export function csvText(tables: readonly Table[]): string {
  return tables
    .map(({ caption, heads, rows }) => {
      const lines = [heads.map((head) => headOf(head).says), ...rows].map((row) => row.map(cell).join(','));
      return `${[...(tables.length > 1 ? [cell(caption)] : []), ...lines].join('\r\n')}\r\n`;
    })
    .join('\r\n');
}

/** Numbers stand as they are, not as they are drawn; what is not known stays empty. */
function cell(content: Cell): string {
  if (typeof content === 'string') return textCell(content);
  if ('says' in content) return textCell(content.beside ? `${content.says} ${content.beside}` : content.says);
  return content.value === null ? '' : `${content.atLeast === true ? '≥ ' : ''}${content.value}`;
}

/** A true minus and narrow spaces are for the eye; a spreadsheet reads plain ones. */
function textCell(text: string): string {
  const plain = text.replaceAll(NARROW, ' ').replaceAll('−', '-');
  return /[",\r\n]/u.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
