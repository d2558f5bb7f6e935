/** The lines that a run prints of its cells. */
import type { Cell } from './cells.ts';
import type { Judged } from './judge-draw.ts';
import { namesFor } from './names.ts';

/** How often each text occurs, most often first. */
function tally(texts: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return [...counts]
    .sort(([, one], [, other]) => other - one)
    .map(([text, count]) => `${text} ${count}`)
    .join(', ');
}

export function sayCell({ name, pad }: Cell, judged: readonly Judged[]): string {
  const of = judged.length;
  const right = (within: number): number =>
    judged.filter(({ failed, wish }) => {
      if (wish.fault === null) return false;
      const domain = wish.pad.startsWith('sensor') ? 'sensor' : 'reported';
      const names: readonly string[] = namesFor(wish.fault.name, { domain });
      return failed.slice(0, within).some((id) => names.includes(id));
    }).length;
  const isFault = judged.some(({ wish }) => wish.fault !== null);
  return [
    `${pad.padEnd(10)} ${name}: ${isFault ? `right first ${right(1)}, at all ${right(99)} of ${of}; ` : ''}${tally(judged.map(({ verdict }) => verdict))}`,
    `    first: ${tally(judged.map(({ failed }) => failed[0] ?? '(none)'))}`,
    `    any:   ${tally(judged.flatMap(({ failed }) => failed))}`,
    `    cannot say: ${tally(judged.flatMap(({ cannotSay }) => cannotSay))}`,
  ].join('\n');
}

/** The reasons of verdicts, numbers blanked. */
export function sayReasons(judged: readonly Judged[]): string[] {
  const counts = new Map<string, number>();
  for (const { verdict, why } of judged) {
    const text = `${verdict}: ${why.replace(/[-−]?\d+(?:[.,]\d+)*/g, '#')}`;
    counts.set(text, (counts.get(text) ?? 0) + 1);
  }
  return [...counts].sort(([, one], [, other]) => other - one).map(([text, count]) => `${count} × ${text}`);
}
