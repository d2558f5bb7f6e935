/** Performs what a memory session asks for, one thing at a time, and answers it with what became of it. */
import type { JournalStep, SessionEffect, SessionEvent, Steps } from '../../../core/image/memory-effects.ts';
import type { Problem, Result } from '../../../core/result.ts';
import type { Clock } from '../time/clock.ts';

export interface DriverPorts {
  readonly clock: Clock;
  readonly send: (reportId: number, payload: Uint8Array) => Promise<Result<void>>;
  readonly keep: (image: Uint8Array, why: string, map: string) => Promise<Result<unknown>>;
  readonly journal: (entry: JournalStep) => Promise<Result<unknown>>;
  /** The session has moved on. */
  readonly moved: () => void;
}

type Answer = (event: SessionEvent) => void;

export class MemoryDriver {
  readonly #ports: DriverPorts;
  readonly #strays: Uint8Array[] = [];
  #lost: Problem | null = null;
  #isAborted = false;
  /** What waits for a reply, or passes a time. */
  #waiting: { readonly for: 'reply' | 'time'; readonly answer: Answer } | null = null;

  constructor(ports: DriverPorts) {
    this.#ports = ports;
  }

  async run<T>(session: Steps<T>): Promise<T> {
    let step = session.next();
    while (step.done !== true) {
      const event = await this.#perform(step.value);
      step = session.next(event);
      this.#ports.moved();
    }
    return step.value;
  }

  /** A reply of the pad's; the bytes are kept. */
  reply(payload: Uint8Array): void {
    const waiting = this.#waiting;
    const copy = Uint8Array.from(payload);
    if (waiting === null) this.#strays.push(copy);
    else waiting.answer({ is: waiting.for === 'reply' ? 'reply' : 'stray', payload: copy });
  }

  lost(problem: Problem): void {
    this.#lost = problem;
    this.#waiting?.answer({ is: 'lost', problem });
  }

  /** The session hears of it with the next thing that it asks of the pad. */
  abort(): void {
    this.#isAborted = true;
  }

  async #perform(effect: SessionEffect): Promise<SessionEvent> {
    if (effect.do === 'keep') return keptEvent(await this.#ports.keep(effect.image, effect.why, effect.map));
    if (effect.do === 'journal') return keptEvent(await this.#ports.journal(effect.entry));
    if (this.#lost !== null) return { is: 'lost', problem: this.#lost };
    if (this.#isAborted) {
      this.#isAborted = false;
      return { is: 'abort' };
    }
    const stray = this.#strays.shift();
    if (stray !== undefined) return { is: 'stray', payload: stray };
    return effect.do === 'wait' ? this.#await('time', effect.millis) : this.#send(effect);
  }

  #send(effect: SessionEffect & { do: 'send' }): Promise<SessionEvent> {
    // A reply may come before the system says that the command was sent.
    const event = this.#await('reply', effect.timeoutMillis);
    const waiting = this.#waiting;
    void this.#ports.send(effect.reportId, effect.payload).then((sent) => {
      if (!sent.ok && this.#waiting === waiting) waiting?.answer({ is: 'unsent', problem: sent.problem });
    });
    return event;
  }

  #await(what: 'reply' | 'time', millis: number): Promise<SessionEvent> {
    return new Promise((resolve) => {
      const answer: Answer = (event) => {
        cancel();
        this.#waiting = null;
        resolve(event);
      };
      const cancel = this.#ports.clock.after(millis, () => answer({ is: what === 'reply' ? 'timeout' : 'waited' }));
      this.#waiting = { for: what, answer };
    });
  }
}

function keptEvent(result: Result<unknown>): SessionEvent {
  return result.ok ? { is: 'kept' } : { is: 'unkept', problem: result.problem };
}
