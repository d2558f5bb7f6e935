/**
 * Who may use the bench through the socket: a ticket is good once and becomes a token of its own; the token is good for
 * as long as this program runs. Both are 256 random bits and are kept here as digests only.
 */
import { createHash, randomBytes } from 'node:crypto';

export interface Claim {
  readonly ticket?: string | undefined;
  readonly token?: string | undefined;
}

export class Entrance {
  readonly #tickets = new Set<string>();
  readonly #tokens = new Set<string>();

  issueTicket(): string {
    const ticket = secret();
    this.#tickets.add(digest(ticket));
    return ticket;
  }

  /** The token to use from now on, or null where the claim is not good. A good token is answered with itself. */
  enter(claim: Claim): string | null {
    if (claim.token !== undefined && this.#tokens.has(digest(claim.token))) return claim.token;
    if (claim.ticket === undefined || !this.#tickets.delete(digest(claim.ticket))) return null;
    const token = secret();
    this.#tokens.add(digest(token));
    return token;
  }
}

function secret(): string {
  return randomBytes(32).toString('base64url');
}

/** Looking a digest up gives away no time that depends on the secret's own letters. */
function digest(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}
