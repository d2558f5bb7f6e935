import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { done } from '../../../../core/result.ts';
import { SampleBatchWriter } from '../../../../shared/sample-batch.ts';
import { CLOSED, LARGEST_FRAME } from '../../../../shared/socket.ts';
import { standInBench } from '../stand-in-bench.ts';
import { get, openShell, Page, type OpenShell } from './open-shell.ts';

const hello = { program: 'stickwright', version: '0.0.0', shell: 'local', notices: [] };

describe('local shell', () => {
  let open: OpenShell;
  let port: number;

  beforeEach(async () => {
    open = await openShell(standInBench({ 'bench.hello': () => done(hello), 'pads.list': () => done([{ pad: '' }]) }));
    port = open.shell.port;
  });
  afterEach(() => open.end());

  it('serves the page under a policy that allows its own origin alone', async () => {
    const page = await get(port, '/');
    expect(page.status).toBe(200);
    expect(page.body).toContain('<title>page</title>');
    const policy = String(page.headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("connect-src 'self'");
    expect(policy).not.toContain('unsafe');
    expect(page.headers['set-cookie']).toBeUndefined();
  });

  it('stands on 127.0.0.1 alone', () => {
    expect(new URL(open.shell.newAddress()).host).toBe(`127.0.0.1:${port}`);
    expect(new URL(open.shell.newAddress()).search).toBe('');
  });

  it.each(['localhost', 'bench.example', '127.0.0.1', '127.0.0.1:1'])(
    'refuses a request addressed to %s',
    async (host) => {
      const page = await get(port, '/', { Host: host });
      expect(page.status).toBe(403);
      expect(page.body).toContain(`use http://127.0.0.1:${port}/`);
    },
  );

  it('refuses a request from another page', async () => {
    expect((await get(port, '/', { Origin: 'http://bench.example' })).status).toBe(403);
    expect((await get(port, '/', { Origin: 'null' })).status).toBe(403);
    expect((await get(port, '/', { Origin: `http://127.0.0.1:${port}` })).status).toBe(200);
  });

  it('refuses any method that would send something', async () => {
    expect((await get(port, '/', {}, 'POST')).status).toBe(405);
    expect((await get(port, '/', {}, 'PUT')).status).toBe(405);
  });

  it.each([
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/..%2fsecret.txt',
    '/%2e%2e%5csecret.txt',
    '//../secret.txt',
    '/%00',
  ])('finds nothing outside of the page folder at %s', async (path) => {
    const answer = await get(port, path);
    expect(answer.status).toBe(404);
    expect(answer.body).not.toContain('not for the page');
  });

  it('refuses a socket with a wrong Host, a wrong Origin, no Origin or another path', async () => {
    expect(await new Page(port, { host: 'bench.example' }).ended).toEqual({ status: 403 });
    expect(await new Page(port, { host: `localhost:${port}` }).ended).toEqual({ status: 403 });
    expect(await new Page(port, { origin: 'http://bench.example' }).ended).toEqual({ status: 403 });
    expect(await new Page(port, { origin: 'null' }).ended).toEqual({ status: 403 });
    expect(await new Page(port, { origin: null }).ended).toEqual({ status: 403 });
    expect(await new Page(port, { path: '/bridge?token=x' }).ended).toEqual({ status: 403 });
    expect(await new Page(port, { path: '/' }).ended).toEqual({ status: 403 });
  });

  it('answers nothing before the page is let in', async () => {
    const page = await new Page(port).opened();
    page.send({ kind: 'call', id: 1, name: 'bench.hello', request: {} });
    expect(await page.ended).toMatchObject({ code: CLOSED.refused });
    expect(page.frames).toEqual([]);
    expect(open.bench.asked).toEqual([]);
  });

  it('lets a page in by its ticket and, after a reload, by the token', async () => {
    const token = await new Page(port).enter({ ticket: open.ticket() });
    const reloaded = new Page(port);
    expect(await reloaded.enter({ token })).toBe(token);
    reloaded.send({ kind: 'call', id: 7, name: 'bench.hello', request: {} });
    await reloaded.until(() => reloaded.frames.length > 1);
    expect(reloaded.frames[1]).toEqual({ kind: 'answer', id: 7, result: { ok: true, value: hello } });
  });

  it('refuses a used ticket, an unknown ticket, a wrong token and an empty claim', async () => {
    const ticket = open.ticket();
    await new Page(port).enter({ ticket });
    for (const claim of [{ ticket }, { ticket: 'x'.repeat(43) }, { token: 'y'.repeat(43) }, {}]) {
      const page = await new Page(port).opened();
      page.send({ kind: 'enter', ...claim });
      expect(await page.ended).toMatchObject({ code: CLOSED.refused });
      expect(page.frames).toEqual([]);
    }
  });

  it('ends a socket that speaks anything but the agreed frames', async () => {
    for (const frame of ['{', '[]', '{"kind":"shout"}', '{"kind":"call","id":-1,"name":"pads.list"}']) {
      const page = await new Page(port).opened();
      page.send(frame);
      expect(await page.ended).toMatchObject({ code: CLOSED.malformed });
    }
    const binary = await new Page(port).opened();
    binary.socket.send(new Uint8Array([1, 2, 3]));
    expect(await binary.ended).toMatchObject({ code: CLOSED.malformed });
  });

  it('ends a socket whose message is too large, before reading it', async () => {
    const page = new Page(port);
    await page.enter({ ticket: open.ticket() });
    page.send(JSON.stringify({ kind: 'call', id: 1, name: 'bench.hello', request: 'x'.repeat(LARGEST_FRAME) }));
    expect(await page.ended).toMatchObject({ code: 1009 });
    expect(open.bench.asked).toEqual([]);
  });

  it('answers a bad request, an unknown call and a reply outside of the contract with a problem', async () => {
    const page = new Page(port);
    await page.enter({ ticket: open.ticket() });
    page.send({ kind: 'call', id: 1, name: 'pads.open', request: { pad: 5 } });
    page.send({ kind: 'call', id: 2, name: '__proto__', request: {} });
    page.send({ kind: 'call', id: 3, name: 'pads.list', request: {} });
    await page.until(() => page.frames.length > 3);
    const codes = page.frames
      .slice(1)
      .map((frame) => (frame as { result: { problem: { code: string } } }).result.problem.code);
    expect(codes).toEqual(['request-invalid', 'call-unknown', 'bench-fault']);
  });

  it('passes events and sample batches to a page that was let in, and stops when it leaves', async () => {
    const page = new Page(port);
    await page.enter({ ticket: open.ticket() });
    open.bench.tell('pads.changed', []);
    open.bench.tell('pads.changed', [{ pad: 1 }]);
    const writer = new SampleBatchWriter('pad-1');
    writer.report(1, 2, Uint8Array.of(3, 4));
    const batch = writer.take();
    open.bench.show(batch);
    await page.until(() => page.batches.length > 0);
    expect(page.frames.slice(1)).toEqual([{ kind: 'event', name: 'pads.changed', payload: [] }]);
    expect(page.batches).toEqual([batch]);
    page.socket.close();
    await page.ended;
    await expect.poll(() => open.bench.listeners()).toBe(0);
  });
});
