/** Why verdicts were given, over many draws. */
import type { Judged } from './judge-draw.ts';

/** Counts the sentences, numbers blanked. */
export class Reasons {
  readonly #counts = new Map<string, number>();

  add(judged: readonly Judged[]): void {
    for (const { verdict, why } of judged) {
      const text = `${verdict}: ${why.replace(/[-−]?\d+(?:[.,]\d+)*/g, '#')}`;
      this.#counts.set(text, (this.#counts.get(text) ?? 0) + 1);
    }
  }

  /** Most often first. */
  lines(): string[] {
    return [...this.#counts].sort(([, one], [, other]) => other - one).map(([text, count]) => `${count} × ${text}`);
  }
}
