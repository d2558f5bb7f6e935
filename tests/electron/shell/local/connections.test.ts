/** Connections that are held, crowded or broken off: raw sockets, for no client library would do such things. */
import { connect, type Socket } from 'node:net';
import { once } from 'node:events';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { LIMITS } from '../../../../electron/shell/local/connection-limits.ts';
import { CLOSED } from '../../../../shared/socket.ts';
import { get, openShell, Page, type OpenShell } from './open-shell.ts';
import { upgradeRequest } from './upgrade-request.ts';

/** Times that are over at once, for a test that waits for their end. */
const SHORT = { ...LIMITS, head: 20, request: 40, idle: 20, answer: 60, look: 10 };

let open: OpenShell;
afterEach(() => open.end());

async function connection(port: number): Promise<Socket> {
  const socket = connect(port, '127.0.0.1');
  socket.on('error', () => undefined);
  await once(socket, 'connect');
  return socket;
}

function closed(socket: Socket): Promise<string> {
  let heard = '';
  socket.on('data', (part: Buffer) => (heard += part.toString()));
  // Waiting with `once` of the module would end with an error of the socket, which a broken one has.
  return new Promise((resolve) => socket.once('close', () => resolve(heard)));
}

describe('a connection that is held', () => {
  beforeEach(async () => {
    open = await openShell(undefined, SHORT);
  });

  it.each([
    ['says nothing', ''],
    ['stops amid its head', 'GET / HTTP/1.1\r\nHost: 127.0'],
    ['stops amid its body', 'GET / HTTP/1.1\r\nHost: x\r\nContent-Length: 9\r\n\r\n1'],
  ])('is ended where it %s', async (_how, said) => {
    const socket = await connection(open.shell.port);
    const end = closed(socket);
    socket.write(said);
    expect(await end).toMatch(said.endsWith('1') ? /^HTTP\/1\.1 40[38] / : /^(?:|HTTP\/1\.1 408 [^]*)$/u);
  });

  it('is ended letter by letter too, for the time of a head runs from its begin', async () => {
    const socket = await connection(open.shell.port);
    const end = closed(socket);
    const drip = setInterval(() => socket.write('X'), 2);
    socket.write('GET / HTTP/1.1\r\nX-Slow: ');
    expect(await end).toMatch(/^HTTP\/1\.1 408 /u);
    clearInterval(drip);
  });
});

describe('a connection that has had its answer', () => {
  it('is ended after its answer where nothing more is asked', async () => {
    // The time of a head is the usual one: a busy machine takes longer to read it than the others here.
    open = await openShell(undefined, { ...LIMITS, idle: 20, look: 10 });
    const socket = await connection(open.shell.port);
    const end = closed(socket);
    socket.write(`GET / HTTP/1.1\r\nHost: 127.0.0.1:${open.shell.port}\r\n\r\n`);
    expect(await end).toContain('<title>page</title>');
  });

  it('is ended where it was refused an upgrade and stays', async () => {
    open = await openShell();
    const socket = connect({ port: open.shell.port, host: '127.0.0.1', allowHalfOpen: true });
    const end = closed(socket);
    socket.write(upgradeRequest(open.shell.port, 'http://bench.example'));
    socket.on('error', () => undefined);
    let says: NodeJS.Timeout | undefined;
    socket.on('end', () => (says = setInterval(() => socket.write('still here'), 5)));
    expect(await end).toContain('HTTP/1.1 403 ');
    clearInterval(says);
  });
});

describe('connections that are many', () => {
  beforeEach(async () => {
    open = await openShell();
  });

  it('are taken up to a number, and others turned away until one ends', async () => {
    const { port } = open.shell;
    const held = await Promise.all(Array.from({ length: LIMITS.connections }, () => connection(port)));
    const pages = held.map((socket) => closed(socket));
    await closed(await connection(port));
    held[0]?.destroy();
    await pages[0];
    await expect
      .poll(() =>
        get(port, '/').then(
          ({ status }) => status,
          () => 0,
        ),
      )
      .toBe(200);
    for (const socket of held) socket.destroy();
    await Promise.all(pages);
  });

  it('are a number at most for one page, and the next is taken when one of them ends', async () => {
    const { port } = open.shell;
    const first = new Page(port);
    const token = await first.enter({ ticket: open.ticket() });
    for (let count = 1; count < LIMITS.socketsOfPage; count += 1) await new Page(port).enter({ token });
    const over = await new Page(port).opened();
    over.send({ kind: 'enter', token });
    expect(await over.ended).toMatchObject({ code: CLOSED.crowded });
    await new Page(port).enter({ ticket: open.ticket() });
    first.socket.close();
    await first.ended;
    expect(await new Page(port).enter({ token })).toBe(token);
  });
});

describe('the closing of the shell', () => {
  it('tells the pages that the program ended, and waits for nobody', async () => {
    open = await openShell();
    const { port } = open.shell;
    const page = new Page(port);
    await page.enter({ ticket: open.ticket() });
    const held = await connection(port);
    const stays = connect({ port, host: '127.0.0.1', allowHalfOpen: true });
    stays.on('error', () => undefined);
    stays.write(upgradeRequest(port, `http://127.0.0.1:${port}`));
    await once(stays, 'data');
    const end = closed(held);
    await open.shell.close();
    expect(await page.ended).toMatchObject({ code: CLOSED.goingAway });
    await end;
    stays.destroy();
  });
});
