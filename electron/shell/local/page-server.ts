/** Serves the built page, and nothing else, on 127.0.0.1. */
import { createServer, type Server } from 'node:http';
import sirv from 'sirv';
import { PAGE_HEADERS } from '../content-policy.ts';
import { limitConnections, LIMITS, type ConnectionLimits } from './connection-limits.ts';
import { refusalOf } from './request-checks.ts';

/** Listens on the port, or a free one for 0; rejects with the system's reason, e.g. EADDRINUSE. */
export async function servePage(
  folder: string,
  port: number,
  limits: ConnectionLimits = LIMITS,
): Promise<{ server: Server; port: number }> {
  // Without `dev` the files are listed once at the start: a path that is not in the list cannot be reached by any spelling.
  const files = sirv(folder, { etag: true });
  const server = createServer({ connectionsCheckingInterval: limits.look }, (request, response) => {
    for (const [name, value] of Object.entries(PAGE_HEADERS)) response.setHeader(name, value);
    const refusal = refusalOf(request, portOf(server));
    if (refusal !== null) return void response.writeHead(403, { 'Content-Type': 'text/plain' }).end(refusal);
    if (request.method !== 'GET' && request.method !== 'HEAD') return void response.writeHead(405).end();
    // A file of the list can vanish when the page is built anew meanwhile: that request fails, the server goes on.
    response.once('pipe', (file) => file.once('error', () => response.destroy()));
    files(request, response, () => void response.writeHead(404).end());
  });
  limitConnections(server, limits);
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', resolve);
  });
  return { server, port: portOf(server) };
}

function portOf(server: Server): number {
  const address = server.address();
  return typeof address === 'object' && address !== null ? address.port : 0;
}
