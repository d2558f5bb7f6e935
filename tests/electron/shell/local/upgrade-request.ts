/** The head that asks for a page's socket, as a page of the origin given would send it. */
import { SOCKET_PATH } from '../../../../shared/socket.ts';

export function upgradeRequest(port: number, origin: string): string {
  const lines = [
    `GET ${SOCKET_PATH} HTTP/1.1`,
    `Host: 127.0.0.1:${port}`,
    `Origin: ${origin}`,
    'Connection: Upgrade',
    'Upgrade: websocket',
    'Sec-WebSocket-Version: 13',
    'Sec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==',
  ];
  return `${lines.join('\r\n')}\r\n\r\n`;
}
