/** CommandConfirmations: each is good once, for what was shown, on one pad, and not for long. */
import { randomBytes } from 'node:crypto';
import { done, failed, type Result } from '../../../core/result.ts';
import type { Clock } from '../time/clock.ts';

export const TOKEN_SECONDS = 120;

/** Milliseconds by which a clock that is kept right may jump back. */
const CLOCK_SET_BACK = 5_000;

interface Held<T> {
  readonly token: string;
  readonly order: T;
  readonly atMicros: number;
  readonly at: number;
}

export class BenchConfirmations<T> {
  readonly #clock: Clock;
  /** The newest of each pad; what was shown before it counts no more. */
  readonly #held = new Map<string, Held<T>>();

  constructor(clock: Clock) {
    this.#clock = clock;
  }

  issue(pad: string, order: T): string {
    const token = randomBytes(16).toString('hex');
    this.#held.set(pad, { token, order, atMicros: this.#clock.micros(), at: this.#clock.now().getTime() });
    return token;
  }

  /** What the confirmation stands for. Refused, it stays as good as it was: it is used up by `use` alone. */
  check(pad: string, token: string): Result<T> {
    const held = this.#held.get(pad);
    if (held?.token !== token)
      return failed(
        'confirmation-unknown',
        'This confirmation is used or for something else; look at the plan again and confirm it.',
      );
    if (this.#isOld(held))
      return failed('confirmation-expired', 'The confirmation is too old; look at the plan again and confirm it.');
    return done(held.order);
  }

  /** What it stood for has begun. */
  use(pad: string): void {
    this.#held.delete(pad);
  }

  /** By either clock: one stands still while the machine sleeps, the other may be set. */
  #isOld({ atMicros, at }: Held<T>): boolean {
    const passed = this.#clock.now().getTime() - at;
    return (
      this.#clock.micros() - atMicros > TOKEN_SECONDS * 1e6 || passed > TOKEN_SECONDS * 1e3 || passed < -CLOCK_SET_BACK
    );
  }
}
