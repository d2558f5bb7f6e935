/** Ends a program in order, whatever asks for it: a signal, a second one, or an error that nobody caught. */
import { failed, type Result } from '../../core/result.ts';
import type { Router } from '../bench/calls/router.ts';

/** A third signal ends the program at once, but not before whoever sent it has seen that it is closing. */
const AT_ONCE_AFTER_MILLIS = 10_000;

export interface ClosingPorts {
  /** In order; one that fails is said, and the next is taken. */
  readonly steps: readonly (() => Promise<void>)[];
  readonly say: (line: string) => void;
  /** Writes an error that nobody caught where it can be read later. */
  readonly note: (thrown: unknown) => void;
  readonly exit: (code: number) => void;
  readonly millis: () => number;
}

export class Closing {
  readonly #ports: ClosingPorts;
  #sinceMillis: number | null = null;
  #signals = 0;
  #code = 0;

  constructor(ports: ClosingPorts) {
    this.#ports = ports;
  }

  get isClosing(): boolean {
    return this.#sinceMillis !== null;
  }

  signal(): void {
    this.#signals += 1;
    if (this.#sinceMillis === null) {
      void this.#close();
      return;
    }
    const isLate = this.#ports.millis() - this.#sinceMillis >= AT_ONCE_AFTER_MILLIS;
    if (this.#signals > 2 && isLate) this.#ports.exit(1);
    else this.#ports.say('closing … what is under way is being brought to its end.');
  }

  /** The program's state is not to be trusted any more: it ends, as far as possible in order. */
  fault(thrown: unknown): void {
    this.#code = 1;
    this.#ports.note(thrown);
    this.#ports.say(`The program met an error of its own (${wordsOf(thrown)}) and closes; start it again.`);
    if (this.#sinceMillis === null) void this.#close();
  }

  async #close(): Promise<void> {
    this.#sinceMillis = this.#ports.millis();
    for (const step of this.#ports.steps) {
      try {
        await step();
      } catch (thrown) {
        this.#code = 1;
        this.#ports.note(thrown);
        this.#ports.say(`A part of the closing failed (${wordsOf(thrown)}); the rest goes on.`);
      }
    }
    this.#ports.exit(this.#code);
  }
}

/** Takes the signals that ask a program to end, and alone: libraries that clean up answer one by sending it once more. */
export function hearSignals(hear: () => void): void {
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.removeAllListeners(signal);
    process.on(signal, hear);
  }
}

/** Lets no call through any more as soon as it is closing; events go on, for they tell how it ends. */
export function untilClosing(router: Router, isClosing: () => boolean): Router {
  return {
    answer(name, request): Promise<Result<unknown>> {
      if (!isClosing()) return router.answer(name, request);
      return Promise.resolve(failed('closing', 'The program is closing; start it again to go on.'));
    },
    events: (hear) => router.events(hear),
  };
}

export function wordsOf(thrown: unknown): string {
  return thrown instanceof Error ? thrown.message : String(thrown);
}
