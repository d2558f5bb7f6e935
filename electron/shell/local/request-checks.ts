/** Which requests the local server answers at all: only those addressed to it by its own number, from its own page. */
import type { IncomingMessage } from 'node:http';

/** Why a request is refused, or null. A name that merely resolves to this machine is refused: so is DNS rebinding. */
export function refusalOf(request: IncomingMessage, port: number): string | null {
  const own = `127.0.0.1:${port}`;
  if (request.headers.host !== own) return `This address is not served; use http://${own}/.`;
  const origin = request.headers.origin;
  if (origin !== undefined && origin !== `http://${own}`) return 'Requests from other pages are refused.';
  return null;
}

/** A socket must also say where it comes from: browsers always do. */
export function socketRefusalOf(request: IncomingMessage, port: number, path: string): string | null {
  if (request.headers.origin === undefined) return 'A socket is opened only by the page itself.';
  if (request.url !== path) return 'There is no socket at this path.';
  return refusalOf(request, port);
}
