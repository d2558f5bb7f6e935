/** Confirmations: each is good once, for what was shown, on one pad, and not for long. */
import { randomBytes } from 'node:crypto';
import { done, failed, type Result } from '../../core/result.ts';
import type { Clock } from './clock.ts';

export const TOKEN_SECONDS = 120;

export class WriteTokens<T> {
  readonly #clock: Clock;
  /** The newest of each pad; what was shown before it counts no more. */
  readonly #held = new Map<string, { readonly token: string; readonly order: T; readonly untilMicros: number }>();

  constructor(clock: Clock) {
    this.#clock = clock;
  }

  issue(pad: string, order: T): string {
    const token = randomBytes(16).toString('hex');
    this.#held.set(pad, { token, order, untilMicros: this.#clock.micros() + TOKEN_SECONDS * 1e6 });
    return token;
  }

  /** What the confirmation stands for; it is used up by this, whatever comes of it. */
  redeem(pad: string, token: string): Result<T> {
    const held = this.#held.get(pad);
    if (held?.token !== token)
      return failed(
        'confirmation-unknown',
        'This confirmation is used or for something else; look at the plan again and confirm it.',
      );
    this.#held.delete(pad);
    if (held.untilMicros < this.#clock.micros())
      return failed('confirmation-expired', 'The confirmation is too old; look at the plan again and confirm it.');
    return done(held.order);
  }
}
