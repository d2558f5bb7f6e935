/** The bench for a browser on the same machine: page and socket on one port of 127.0.0.1. */
import type { Duplex } from 'node:stream';
import { STATUS_CODES } from 'node:http';
import { WebSocketServer } from 'ws';
import { LARGEST_FRAME, SOCKET_PATH } from '../../../shared/socket.ts';
import type { Bench } from '../../bench/bench-port.ts';
import type { Router } from '../../bench/router.ts';
import { Entrance } from './entrance.ts';
import { servePage } from './page-server.ts';
import { socketRefusalOf } from './request-checks.ts';
import { serveSocket } from './socket-session.ts';

export interface LocalShell {
  readonly port: number;
  /** An address that lets one page in, once. The fragment never reaches a server or its log. */
  newAddress(): string;
  close(): Promise<void>;
}

export async function openLocalShell(
  bench: Bench,
  router: Router,
  options: { readonly folder: string; readonly port: number },
): Promise<LocalShell> {
  const { server, port } = await servePage(options.folder, options.port);
  const entrance = new Entrance();
  const sockets = new WebSocketServer({ noServer: true, maxPayload: LARGEST_FRAME, perMessageDeflate: false });
  server.on('upgrade', (request, stream, head) => {
    const refusal = socketRefusalOf(request, port, SOCKET_PATH);
    if (refusal !== null) refuseUpgrade(stream, refusal);
    else sockets.handleUpgrade(request, stream, head, (socket) => serveSocket(socket, bench, router, entrance));
  });
  return {
    port,
    newAddress: () => `http://127.0.0.1:${port}/#ticket=${entrance.issueTicket()}`,
    async close() {
      for (const socket of sockets.clients) socket.terminate();
      server.closeAllConnections();
      await new Promise<void>((resolve) => void server.close(() => resolve()));
    },
  };
}

function refuseUpgrade(stream: Duplex, why: string): void {
  const head = [`HTTP/1.1 403 ${STATUS_CODES[403] ?? ''}`, 'Connection: close', 'Content-Type: text/plain'];
  stream.end(`${head.join('\r\n')}\r\nContent-Length: ${Buffer.byteLength(why)}\r\n\r\n${why}`);
}
