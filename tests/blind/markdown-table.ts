/** A table in Markdown, its columns as wide as their widest cell; the first is text, the others numbers. */
export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((title, column) =>
    Math.max(3, ...[title, ...rows.map((row) => row[column] ?? '')].map(({ length }) => length)),
  );
  const line = (row: readonly string[]): string =>
    `| ${widths.map((width, column) => (column === 0 ? (row[0] ?? '').padEnd(width) : (row[column] ?? '').padStart(width))).join(' | ')} |`;
  const rule = widths.map((width, column) => (column === 0 ? '-'.repeat(width) : `${'-'.repeat(width - 1)}:`));
  return [line(head), line(rule), ...rows.map(line)].join('\n');
}
