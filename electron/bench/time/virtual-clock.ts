/** A clock that a program moves on by itself, as fast as its work allows: a survey of a simulated pad takes seconds. */
import { setImmediate as nextTurn } from 'node:timers/promises';
import type { Clock } from './clock.ts';

interface Timer {
  readonly due: number;
  readonly order: number;
  readonly call: () => void;
}

/** Timers that are called before files and streams get their turn. */
const CALLS_A_TURN = 64;

export class VirtualClock implements Clock {
  readonly #startedAt: number;
  #micros = 0;
  #order = 0;
  #timers: Timer[] = [];

  /** `startedAt` is the date and time of day at its beginning. */
  constructor(startedAt: Date) {
    this.#startedAt = startedAt.getTime();
  }

  micros(): number {
    return this.#micros;
  }

  now(): Date {
    return new Date(this.#startedAt + this.#micros / 1000);
  }

  after(millis: number, call: () => void): () => void {
    const timer = { due: this.#micros + Math.round(millis * 1000), order: this.#order, call };
    this.#order += 1;
    const at = this.#timers.findIndex((other) => other.due > timer.due);
    this.#timers.splice(at < 0 ? this.#timers.length : at, 0, timer);
    return () => {
      this.#timers = this.#timers.filter((other) => other.order !== timer.order);
    };
  }

  /** Moves on from timer to timer until `over` says so; false when nothing is left to wait for. */
  async run(over: () => boolean): Promise<boolean> {
    for (;;) {
      for (let call = 0; call < CALLS_A_TURN; call += 1) {
        if (over()) return true;
        const next = this.#timers.shift();
        if (next === undefined) return false;
        this.#micros = next.due;
        next.call();
      }
      await nextTurn();
    }
  }
}
