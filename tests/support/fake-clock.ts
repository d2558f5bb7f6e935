/** A clock that stands still until a test lets time pass; what is due then is called in order. */
import type { Clock } from '../../electron/bench/time/clock.ts';

interface Due {
  readonly atMicros: number;
  readonly call: () => void;
}

export class FakeClock implements Clock {
  readonly #due = new Set<Due>();
  #micros: number;

  constructor(startMicros = 5_000_000_000) {
    this.#micros = startMicros;
  }

  /** Calls that are still to come. */
  get waiting(): number {
    return this.#due.size;
  }

  micros(): number {
    return this.#micros;
  }

  now(): Date {
    return new Date(Date.UTC(2024, 0, 1) + this.#micros / 1000);
  }

  after(millis: number, call: () => void): () => void {
    const due: Due = { atMicros: this.#micros + Math.round(millis * 1000), call };
    this.#due.add(due);
    return () => void this.#due.delete(due);
  }

  /** Lets time pass without giving promises a chance to go on in between. */
  pass(millis: number): void {
    const end = this.#micros + Math.round(millis * 1000);
    for (let next = this.#earliest(end); next !== null; next = this.#earliest(end)) this.#call(next);
    this.#micros = end;
  }

  /** Lets time pass; after each call everything that awaits goes on as far as it can. */
  async passSlowly(millis: number): Promise<void> {
    const end = this.#micros + Math.round(millis * 1000);
    await settle();
    for (let next = this.#earliest(end); next !== null; next = this.#earliest(end)) {
      this.#call(next);
      await settle();
    }
    this.#micros = end;
  }

  #earliest(end: number): Due | null {
    let found: Due | null = null;
    for (const due of this.#due)
      if (due.atMicros <= end && (found === null || due.atMicros < found.atMicros)) found = due;
    return found;
  }

  #call(due: Due): void {
    this.#due.delete(due);
    this.#micros = Math.max(this.#micros, due.atMicros);
    due.call();
  }
}

/** One whole turn of the event loop: promises and finished reads have had their say. */
export function settle(): Promise<void> {
  return new Promise((resolve) => {
    setImmediate(resolve);
  });
}
