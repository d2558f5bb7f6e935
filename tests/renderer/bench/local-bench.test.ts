import { describe, expect, it, onTestFinished } from 'vitest';
import { done } from '../../../core/result.ts';
import type { Connection } from '../../../renderer/bench/connection.ts';
import { openLocalBench } from '../../../renderer/bench/local-bench.ts';
import { SampleBatchWriter } from '../../../shared/sample-batch.ts';
import { openShell, type OpenShell } from '../../electron/shell/local/open-shell.ts';
import { standInBench } from '../../electron/shell/stand-in-bench.ts';
import { PageWindow } from './page-window.ts';

const hello = { program: 'stickwright', version: '0.0.0', shell: 'local', notices: [] };

async function shellFor(): Promise<OpenShell> {
  const shell = await openShell(standInBench({ 'bench.hello': () => done(hello) }));
  onTestFinished(() => shell.end());
  return shell;
}

async function connect(page: PageWindow) {
  // Node's own WebSocket says no Origin; a browser always does.
  const Plain = globalThis.WebSocket;
  const { WebSocket } = await import('ws');
  const origin = page.location.origin;
  globalThis.WebSocket = class extends WebSocket {
    constructor(address: string) {
      super(address, { origin });
    }
  } as unknown as typeof Plain;
  onTestFinished(() => {
    globalThis.WebSocket = Plain;
  });
  const heard: Connection[] = [];
  const bench = await openLocalBench(page.asWindow, (connection) => heard.push(connection));
  return { bench, heard };
}

describe('the page over the local socket', () => {
  it('is let in by its ticket, calls, and hears events and batches', async () => {
    const shell = await shellFor();
    const { bench, heard } = await connect(new PageWindow(shell.shell.newAddress()));
    expect(heard).toEqual(['connecting', 'connected']);
    expect(await bench.call('bench.hello', {})).toEqual({ ok: true, value: hello });
    expect(await bench.call('pads.list', {})).toMatchObject({ ok: false, problem: { code: 'not-here' } });

    const events: unknown[] = [];
    const batches: Uint8Array[] = [];
    const end = bench.listen('pads.changed', (pads) => events.push(pads));
    bench.samples((batch) => batches.push(batch));
    shell.bench.tell('pads.changed', []);
    const writer = new SampleBatchWriter('pad-1');
    writer.report(1, 1, Uint8Array.of(2));
    const batch = writer.take();
    shell.bench.show(batch);
    await expect.poll(() => batches).toEqual([batch]);
    expect(events).toEqual([[]]);
    end();
    shell.bench.tell('pads.changed', []);
    await bench.call('bench.hello', {});
    expect(events).toHaveLength(1);
  });

  it('comes in again after a reload with the token of its tab', async () => {
    const shell = await shellFor();
    const tab = new Map<string, string>();
    await connect(new PageWindow(shell.shell.newAddress(), tab));
    const { bench, heard } = await connect(new PageWindow(`http://127.0.0.1:${shell.shell.port}/`, tab));
    expect(heard.at(-1)).toBe('connected');
    expect((await bench.call('bench.hello', {})).ok).toBe(true);
  });

  it('says what to do where it is refused, and drops a token that is no good', async () => {
    const shell = await shellFor();
    const tab = new Map([['stickwright.token', 'x'.repeat(43)]]);
    const { bench, heard } = await connect(new PageWindow(`http://127.0.0.1:${shell.shell.port}/`, tab));
    expect(heard.at(-1)).toBe('refused');
    expect(tab.size).toBe(0);
    expect(await bench.call('bench.hello', {})).toMatchObject({ ok: false, problem: { code: 'bench-refused' } });
  });

  it('asks for no socket at all without ticket or token', async () => {
    const { bench, heard } = await connect(new PageWindow('http://127.0.0.1:1/'));
    expect(heard).toEqual(['connecting', 'refused']);
    expect((await bench.call('bench.hello', {})).ok).toBe(false);
  });

  it('answers calls that were under way when the bench ends, and says that it was lost', async () => {
    const shell = await openShell(standInBench({ 'bench.hello': () => new Promise(() => undefined) }));
    const { bench, heard } = await connect(new PageWindow(shell.shell.newAddress()));
    const answer = bench.call('bench.hello', {});
    await expect.poll(() => shell.bench.asked.length).toBe(1);
    await shell.end();
    expect(await answer).toMatchObject({ ok: false, problem: { code: 'bench-unreachable' } });
    expect(heard.at(-1)).toBe('lost');
  });
});
