/** The built local shell as a process of its own, as `npm start` runs it. */
import { existsSync } from 'node:fs';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readSampleBatch } from '../../../../shared/sample-batch.ts';
import { temporaryFolder } from '../../../support/temporary-folder.ts';
import { get, Page } from './open-shell.ts';
import { localRuns, ticketOf } from './run-local.ts';

const { start } = localRuns();

describe('the built local shell', () => {
  it('prints an address that lets one page in, and the page gets readings of the simulated pad', async () => {
    const { addresses, child, ended } = start();
    const [address] = (await addresses(1)) as [URL];
    expect(address.hostname).toBe('127.0.0.1');
    expect(address.search).toBe('');
    const port = Number(address.port);
    const index = await get(port, '/');
    expect(index.status).toBe(200);
    expect(index.headers['content-security-policy']).toContain("default-src 'none'");

    const page = new Page(port);
    await page.enter({ ticket: ticketOf(address) });
    let pad: string | undefined;
    for (let id = 1; pad === undefined; id += 1) {
      page.send({ kind: 'call', id, name: 'pads.list', request: {} });
      await page.until(() => page.frames.some((frame) => (frame as { id?: number }).id === id));
      const answer = page.frames.find((frame) => (frame as { id?: number }).id === id) as {
        result: { value: { pad: string; identity: { transport: string } }[] };
      };
      pad = answer.result.value.find(({ identity }) => identity.transport === 'simulated')?.pad;
    }
    page.send({ kind: 'call', id: 0, name: 'pads.open', request: { pad } });
    await page.until(() => page.batches.length > 3);
    const times: number[] = [];
    for (const batch of page.batches) readSampleBatch(batch, { report: (t) => times.push(t), gap: () => undefined });
    expect(times.length).toBeGreaterThan(3);
    expect(times).toEqual(times.toSorted((a, b) => a - b));

    child.kill('SIGTERM');
    expect(await ended).toMatchObject({ code: 0, stderr: '' });
  });

  it('prints a new address for every line it is given, each good once', async () => {
    const { addresses, child } = start();
    await addresses(1);
    child.stdin.write('\n');
    const [first, second] = (await addresses(2)) as [URL, URL];
    expect(ticketOf(first)).not.toBe(ticketOf(second));
    const port = Number(first.port);
    for (const address of [first, second]) {
      const page = new Page(port);
      expect(await page.enter({ ticket: ticketOf(address) })).toMatch(/^[\w-]{43}$/u);
    }
    const again = await new Page(port).opened();
    again.send({ kind: 'enter', ticket: ticketOf(first) });
    expect(await again.ended).toMatchObject({ code: 4401 });
  });

  it('stays up without a keyboard, as a service or a script starts it', async () => {
    const { addresses, child, ended } = start({}, 'ignore');
    const [address] = (await addresses(1)) as [URL];
    expect((await get(Number(address.port), '/')).status).toBe(200);
    child.kill('SIGTERM');
    expect(await ended).toMatchObject({ code: 0, stderr: '' });
  });

  it('keeps its token out of what it prints and out of the process list', async () => {
    const { addresses, child, ended } = start();
    const [address] = (await addresses(1)) as [URL];
    const page = new Page(Number(address.port));
    const token = await page.enter({ ticket: ticketOf(address) });
    expect(child.spawnargs.join(' ')).not.toContain(ticketOf(address));
    child.kill('SIGTERM');
    const { stdout, stderr } = await ended;
    expect(stdout + stderr).not.toContain(token);
  });

  it('says in one line that its port is taken, or none', async () => {
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
    const taken = other.address();
    const port = typeof taken === 'object' && taken !== null ? taken.port : 0;
    const ran = await start({ PORT: String(port) }).ended;
    other.close();
    expect(ran).toMatchObject({ code: 1, stdout: '' });
    expect(ran.stderr).toMatch(/^Port \d+ is taken; [^\n]+\n$/u);
    const wrong = await start({ PORT: 'many' }).ended;
    expect(wrong).toMatchObject({ code: 2, stdout: '' });
    expect(wrong.stderr).toMatch(/^PORT is many; [^\n]+\n$/u);
  });

  it.skipIf(process.platform !== 'linux')(
    'opens the browser on a file of this account alone, which is gone once it was used',
    async () => {
      const tools = await temporaryFolder();
      const opened = path.join(tools, 'opened');
      await writeFile(
        path.join(tools, 'xdg-open'),
        `#!/bin/sh\necho "$*" > ${opened}.new && mv ${opened}.new ${opened}\n`,
        {
          mode: 0o755,
        },
      );
      const run = start({ STICKWRIGHT_NO_BROWSER: '', PATH: `${tools}:/usr/bin:/bin` });
      const [printed] = (await run.addresses(1)) as [URL];
      await expect.poll(() => existsSync(opened), { timeout: 60_000 }).toBe(true);
      const given = (await readFile(opened, 'utf8')).trim();
      expect(given).toMatch(/^file:[^ ]*\/doorway\/enter-[0-9a-f]{32}\.html$/u);
      const door = fileURLToPath(given);
      expect((await stat(door)).mode & 0o777).toBe(0o600);
      const led = /url=([^"]+)"/u.exec(await readFile(door, 'utf8'))?.[1] ?? '';
      expect(new URL(led).origin).toBe(printed.origin);
      expect(ticketOf(new URL(led))).not.toBe(ticketOf(printed));
      await new Page(Number(printed.port)).enter({ ticket: ticketOf(new URL(led)) });
      expect(existsSync(door)).toBe(false);
      run.child.kill('SIGTERM');
      await run.ended;
    },
  );
});
