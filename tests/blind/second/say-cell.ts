/** The lines that a run prints of its cells. */
import { sayCount } from '../demand.ts';
import type { Judged } from './judge-draw.ts';
import type { Result } from './result.ts';

/** How often each text occurs, most often first. */
export function tally(texts: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts]
    .sort(([, one], [, other]) => other - one)
    .map(([text, count]) => `${text} ${count}`)
    .join(', ');
}

export function sayResult({ pad, part, name, shares }: Result): string {
  const counts = shares.map(
    ({ demand, isMissed, known, ...count }) => `${markOf(isMissed, known)}${sayCount(demand, count)}`,
  );
  return `${pad.padEnd(10)} ${part.padEnd(5)} ${name}: ${counts.join('; ')}`;
}

/** `!` fails the run, `~` is not gated. */
function markOf(isMissed: boolean, known: string | null): string {
  if (!isMissed) return '';
  return known === null ? '! ' : '~ ';
}

/** What became of the draws of a cell. */
export function sayJudged(judged: readonly Judged[]): string {
  return [
    `    ${tally(judged.map(({ verdict }) => verdict))}`,
    `    first: ${tally(judged.map(({ failed }) => failed[0] ?? '(none)'))}`,
    `    any:   ${tally(judged.flatMap(({ failed }) => failed))}`,
    `    cannot say: ${tally(judged.flatMap(({ cannotSay }) => cannotSay))}`,
  ].join('\n');
}
