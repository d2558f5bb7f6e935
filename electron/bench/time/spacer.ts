/** Lets something be told at once, but never more often than every so many milliseconds; the last is never lost. */
import type { Clock } from './clock.ts';

export class Spacer {
  readonly #clock: Clock;
  readonly #millis: number;
  readonly #tell: () => void;
  #cancel: (() => void) | null = null;
  #again = false;

  constructor(clock: Clock, millis: number, tell: () => void) {
    this.#clock = clock;
    this.#millis = millis;
    this.#tell = tell;
  }

  call(): void {
    if (this.#cancel !== null) {
      this.#again = true;
      return;
    }
    this.#tell();
    this.#cancel = this.#clock.after(this.#millis, () => {
      this.#cancel = null;
      if (!this.#again) return;
      this.#again = false;
      this.call();
    });
  }

  /** Tells now, whatever waits, and nothing after. */
  last(): void {
    this.#cancel?.();
    this.#cancel = null;
    this.#tell();
  }
}
