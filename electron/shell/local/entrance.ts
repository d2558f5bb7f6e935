/**
 * Who may use the bench through the socket: a ticket is good once, for a while, and becomes a token of its own; the token
 * is good for as long as this program runs. Both are 256 random bits and are kept here as digests only.
 */
import { createHash, randomBytes } from 'node:crypto';
import type { Clock } from '../../bench/time/clock.ts';

export interface Claim {
  readonly ticket?: string | undefined;
  readonly token?: string | undefined;
}

export const TICKET_MILLIS = 600_000;
/** More unused ones are not kept: the oldest goes. */
export const MOST_TICKETS = 32;

interface Ticket {
  /** Called once, when the ticket is good no more. */
  readonly gone: () => void;
  readonly stopWaiting: () => void;
}

export class Entrance {
  readonly #clock: Pick<Clock, 'after'>;
  /** By digest, oldest first. */
  readonly #tickets = new Map<string, Ticket>();
  readonly #tokens = new Set<string>();

  constructor(clock: Pick<Clock, 'after'>) {
    this.#clock = clock;
  }

  issueTicket(gone: () => void = () => undefined): string {
    const ticket = secret();
    const key = digest(ticket);
    const stopWaiting = this.#clock.after(TICKET_MILLIS, () => void this.#spend(key));
    this.#tickets.set(key, { gone, stopWaiting });
    for (const oldest of this.#tickets.keys()) {
      if (this.#tickets.size <= MOST_TICKETS) break;
      this.#spend(oldest);
    }
    return ticket;
  }

  /** The token to use from now on, or null where the claim is not good. A good token is answered with itself. */
  enter(claim: Claim): string | null {
    if (claim.token !== undefined && this.#tokens.has(digest(claim.token))) return claim.token;
    if (claim.ticket === undefined || !this.#spend(digest(claim.ticket))) return null;
    const token = secret();
    this.#tokens.add(digest(token));
    return token;
  }

  /** No ticket is good any more. */
  close(): void {
    for (const key of this.#tickets.keys()) this.#spend(key);
  }

  #spend(key: string): boolean {
    const ticket = this.#tickets.get(key);
    if (ticket === undefined) return false;
    this.#tickets.delete(key);
    ticket.stopWaiting();
    ticket.gone();
    return true;
  }
}

function secret(): string {
  return randomBytes(32).toString('base64url');
}

/** Looking a digest up gives away no time that depends on the secret's own letters. */
function digest(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}
