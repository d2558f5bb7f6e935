/**
 * Connections that are reset, at every moment of theirs, against the built program: an error of a socket that nobody
 * listens to would end it, and any web page can open a socket and break it off.
 */
import { once } from 'node:events';
import { connect, type Socket } from 'node:net';
import { describe, expect, it } from 'vitest';
import { get } from './open-shell.ts';
import { localRuns } from './run-local.ts';
import { upgradeRequest } from './upgrade-request.ts';

const { start } = localRuns();
const TIMES = 10;

/** The first part of a masked frame of 200 bytes. */
const HALF_A_FRAME = Buffer.from([0x81, 0xfe, 0x00, 0xc8, 1, 2, 3, 4, 0x7a, 0x20]);

async function opened(port: number): Promise<Socket> {
  const socket = connect(port, '127.0.0.1');
  socket.on('error', () => undefined);
  await once(socket, 'connect');
  return socket;
}

async function reset(socket: Socket): Promise<void> {
  socket.resetAndDestroy();
  if (!socket.closed) await once(socket, 'close');
}

describe('the built local shell lives on after a reset', () => {
  it.each<[string, (socket: Socket, port: number) => Promise<unknown> | undefined]>([
    ['before anything is said', () => undefined],
    ['before the head of a request ends', (socket) => written(socket, 'GET / HTTP/1.1\r\nHost: 127.0')],
    ['right after a request', (socket, port) => written(socket, request(port))],
    ['right after an upgrade that will be refused', (socket, port) => written(socket, refused(port))],
    ['right after the refusal', (socket, port) => answered(socket, refused(port))],
    ['right after an upgrade that will be taken', (socket, port) => written(socket, taken(port))],
    ['right after the socket is taken', (socket, port) => answered(socket, taken(port))],
    [
      'in the middle of a frame',
      async (socket, port) => {
        await answered(socket, taken(port));
        await written(socket, HALF_A_FRAME);
      },
    ],
  ])('%s', async (_moment, play) => {
    const { addresses, child, ended, stderr } = start();
    const [address] = (await addresses(1)) as [URL];
    const port = Number(address.port);
    for (let count = 0; count < TIMES; count += 1) {
      const socket = await opened(port);
      await play(socket, port);
      await reset(socket);
    }
    expect((await get(port, '/')).status).toBe(200);
    expect(stderr()).toBe('');
    child.kill('SIGTERM');
    expect(await ended).toMatchObject({ code: 0, stderr: '' });
  });
});

const request = (port: number): string => `GET / HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n`;
const refused = (port: number): string => upgradeRequest(port, 'http://bench.example');
const taken = (port: number): string => upgradeRequest(port, `http://127.0.0.1:${port}`);

function written(socket: Socket, said: string | Uint8Array): Promise<void> {
  return new Promise((resolve) => socket.write(said, () => resolve()));
}

async function answered(socket: Socket, said: string): Promise<void> {
  socket.write(said);
  await once(socket, 'data');
}
