/** What was named first for each true fault, as a table in Markdown. */
import { markdownTable } from './markdown-table.ts';

export interface FaultRun {
  readonly fault: string;
  /** What was named of each draw, first to last. */
  readonly answers: readonly { readonly named: readonly string[] }[];
}

export function confusionTable(runs: readonly FaultRun[]): string {
  const named = [...new Set(runs.flatMap(({ answers }) => answers.map(firstOf)))].toSorted();
  const rows = runs.map(({ fault, answers }) => {
    const count = (name: string): number => answers.filter((answer) => firstOf(answer) === name).length;
    return [fault, ...named.map((name) => String(count(name) || ''))];
  });
  return markdownTable([String.raw`true fault \ named first`, ...named], rows);
}

function firstOf({ named }: FaultRun['answers'][number]): string {
  return named[0] ?? 'nothing';
}
