/** The bench for a browser on the same machine: page and socket on one port of 127.0.0.1. */
import type { Duplex } from 'node:stream';
import { STATUS_CODES } from 'node:http';
import { WebSocketServer, type WebSocket } from 'ws';
import { CLOSED, LARGEST_FRAME, SOCKET_PATH } from '../../../shared/socket.ts';
import type { Bench } from '../../bench/calls/bench-port.ts';
import { systemClock } from '../../bench/time/clock.ts';
import type { Router } from '../../bench/calls/router.ts';
import { LIMITS, Seats, watchConnections, type ConnectionLimits } from './connection-limits.ts';
import { Entrance } from './entrance.ts';
import { servePage } from './page-server.ts';
import { socketRefusalOf } from './request-checks.ts';
import { serveSocket } from './socket-session.ts';

/** A page that does not answer the end of its socket is cut off after this. */
const FAREWELL_MILLIS = 1_000;

export interface LocalShell {
  readonly port: number;
  /**
   * An address that lets one page in, once, for some minutes; `gone` is called when it is good no more. The fragment never
   * reaches a server or its log.
   */
  newAddress(gone?: () => void): string;
  /** Ends every page's socket in order, then the server. */
  close(): Promise<void>;
}

export interface ShellOptions {
  readonly folder: string;
  readonly port: number;
  readonly limits?: ConnectionLimits;
}

export async function openLocalShell(bench: Bench, router: Router, options: ShellOptions): Promise<LocalShell> {
  const limits = options.limits ?? LIMITS;
  const { server, port } = await servePage(options.folder, options.port, limits);
  const endConnections = watchConnections(server);
  const hall = { entrance: new Entrance(systemClock), seats: new Seats(limits.socketsOfPage) };
  const sockets = new WebSocketServer({ noServer: true, maxPayload: LARGEST_FRAME, perMessageDeflate: false });
  server.on('upgrade', (request, stream, head) => {
    const refusal = socketRefusalOf(request, port, SOCKET_PATH);
    if (refusal !== null) refuseUpgrade(stream, refusal);
    else sockets.handleUpgrade(request, stream, head, (socket) => serveSocket(socket, bench, router, hall));
  });
  return {
    port,
    newAddress: (gone) => `http://127.0.0.1:${port}/#ticket=${hall.entrance.issueTicket(gone)}`,
    async close() {
      hall.entrance.close();
      const over = new Promise<void>((resolve) => void server.close(() => resolve()));
      await Promise.all([...sockets.clients].map(sayFarewell));
      endConnections();
      await over;
    },
  };
}

/** Whoever is refused has nothing more to say: the connection ends with the answer, not when the other side likes. */
function refuseUpgrade(stream: Duplex, why: string): void {
  const head = [`HTTP/1.1 403 ${STATUS_CODES[403] ?? ''}`, 'Connection: close', 'Content-Type: text/plain'];
  stream.end(`${head.join('\r\n')}\r\nContent-Length: ${Buffer.byteLength(why)}\r\n\r\n${why}`, () => stream.destroy());
}

function sayFarewell(socket: WebSocket): Promise<void> {
  return new Promise((resolve) => {
    const late = setTimeout(() => socket.terminate(), FAREWELL_MILLIS);
    socket.once('close', () => {
      clearTimeout(late);
      resolve();
    });
    socket.close(CLOSED.goingAway, 'The program was ended.');
  });
}
