/** Lines of something that does not wait, for a reader that may be slow: so many are held, and those beyond are counted. */
import type { Terminal } from './terminal.ts';

/** Some seconds of a fast pad. */
const MOST_LINES = 10_000;

export class LineQueue {
  readonly #print: Terminal['print'];
  #waiting: string[] = [];
  #printing: Promise<void> | null = null;
  #left = 0;

  constructor(print: Terminal['print']) {
    this.#print = print;
  }

  /** Lines that were left out, for the reader was too slow. */
  get left(): number {
    return this.#left;
  }

  push(lines: readonly string[]): void {
    const room = MOST_LINES - this.#waiting.length;
    this.#left += Math.max(0, lines.length - room);
    this.#waiting.push(...lines.slice(0, room));
    this.#printing ??= this.#drain();
  }

  /** Resolves once everything that is held was taken. */
  async end(): Promise<void> {
    await this.#printing;
  }

  async #drain(): Promise<void> {
    while (this.#waiting.length > 0) {
      const text = this.#waiting.join('\n');
      this.#waiting = [];
      await this.#print(text);
    }
    this.#printing = null;
  }
}
