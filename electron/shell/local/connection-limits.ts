/** What a program on this machine, or a page in its browser, may take of the local server's patience. Times in milliseconds. */
import type { Server } from 'node:http';
import type { Socket } from 'node:net';

export interface ConnectionLimits {
  /** Connections at a time, sockets of pages among them. */
  readonly connections: number;
  /** Sockets of one page, its copies in other windows among them. */
  readonly socketsOfPage: number;
  /** From the connection to the end of a request's head, and to the end of the request. */
  readonly head: number;
  readonly request: number;
  /** A connection without a request, and one whose answer is not taken. */
  readonly idle: number;
  readonly answer: number;
  /** How often the times above are looked at. */
  readonly look: number;
}

export const LIMITS: ConnectionLimits = {
  connections: 64,
  socketsOfPage: 8,
  head: 10_000,
  request: 15_000,
  idle: 5_000,
  answer: 30_000,
  look: 1_000,
};

export function limitConnections(server: Server, limits: ConnectionLimits): void {
  server.maxConnections = limits.connections;
  server.headersTimeout = limits.head;
  server.requestTimeout = limits.request;
  server.keepAliveTimeout = limits.idle;
  server.timeout = limits.answer;
}

/** Every connection from its first moment to its last; none of them ends the program by breaking. Returns what ends them all. */
export function watchConnections(server: Server): () => void {
  const open = new Set<Socket>();
  server.on('connection', (socket: Socket) => {
    open.add(socket);
    // The server takes its own listener off before an upgrade: a reset would be nobody's then, and end the program.
    socket.on('error', () => socket.destroy());
    socket.on('close', () => open.delete(socket));
  });
  return () => {
    for (const socket of open) socket.destroy();
  };
}

/** The places of one page: a page is known by its token. */
export class Seats {
  readonly #taken = new Map<string, number>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  /** What gives the place free again, or null where all are taken. */
  take(token: string): (() => void) | null {
    const taken = this.#taken.get(token) ?? 0;
    if (taken >= this.#most) return null;
    this.#taken.set(token, taken + 1);
    return () => {
      const left = (this.#taken.get(token) ?? 1) - 1;
      if (left === 0) this.#taken.delete(token);
      else this.#taken.set(token, left);
    };
  }
}
