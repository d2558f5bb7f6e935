/** What was named first for each true fault, as a table in Markdown. */
import type { BlindAnswer } from './judge-unit.ts';

export interface FaultRun {
  readonly fault: string;
  readonly answers: readonly BlindAnswer[];
}

export function confusionTable(runs: readonly FaultRun[]): string {
  const named = [...new Set(runs.flatMap(({ answers }) => answers.map(firstOf)))].toSorted();
  const rows = runs.map(({ fault, answers }) => {
    const cells = named.map((name) => answers.filter((answer) => firstOf(answer) === name).length || '');
    return `| ${[fault, ...cells].join(' | ')} |`;
  });
  return [
    `| true fault \\ named first | ${named.join(' | ')} |`,
    `| --- | ${named.map(() => '--:').join(' | ')} |`,
    ...rows,
  ].join('\n');
}

function firstOf({ named }: BlindAnswer): string {
  return named[0] ?? 'nothing';
}
