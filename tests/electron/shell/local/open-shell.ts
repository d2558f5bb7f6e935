/** Opens a local shell over a stand-in bench and a page folder of its own; speaks to it without a browser. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request as httpRequest, type IncomingHttpHeaders } from 'node:http';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { WebSocket } from 'ws';
import { createRouter } from '../../../../electron/bench/calls/router.ts';
import { LIMITS, type ConnectionLimits } from '../../../../electron/shell/local/connection-limits.ts';
import { openLocalShell, type LocalShell } from '../../../../electron/shell/local/local-shell.ts';
import { SOCKET_PATH } from '../../../../shared/socket.ts';
import { standInBench, type StandInBench } from '../stand-in-bench.ts';

export interface OpenShell {
  readonly shell: LocalShell;
  readonly bench: StandInBench;
  readonly ticket: () => string;
  end(): Promise<void>;
}

export async function openShell(
  bench: StandInBench = standInBench(),
  limits: ConnectionLimits = LIMITS,
): Promise<OpenShell> {
  const top = mkdtempSync(path.join(tmpdir(), 'stickwright-shell-'));
  const folder = path.join(top, 'page');
  mkdirSync(folder);
  writeFileSync(path.join(folder, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(path.join(top, 'secret.txt'), 'not for the page');
  const shell = await openLocalShell(
    bench,
    createRouter(bench, () => undefined),
    { folder, port: 0, limits },
  );
  return {
    shell,
    bench,
    ticket: () => new URL(shell.newAddress()).hash.replace('#ticket=', ''),
    async end() {
      await shell.close();
      rmSync(top, { recursive: true, force: true });
    },
  };
}

/** A raw request: the path goes out as written, dots and all. */
export function get(
  port: number,
  path: string,
  headers: Record<string, string> = {},
  method = 'GET',
): Promise<{ status: number; headers: IncomingHttpHeaders; body: string }> {
  return new Promise((resolve, reject) => {
    const asked = httpRequest({ host: '127.0.0.1', port, path, method, headers }, (response) => {
      let body = '';
      response.on('data', (part: Buffer) => (body += part.toString()));
      response.on('end', () => resolve({ status: response.statusCode ?? 0, headers: response.headers, body }));
    });
    asked.on('error', reject);
    asked.end();
  });
}

/** What a socket met: text frames, binary frames, the close code, or the HTTP status that refused it. */
export class Page {
  readonly socket: WebSocket;
  readonly frames: unknown[] = [];
  readonly batches: Uint8Array[] = [];
  readonly ended: Promise<{ code: number; reason: string } | { status: number }>;
  #waiters: (() => void)[] = [];

  constructor(port: number, options: { host?: string; origin?: string | null; path?: string } = {}) {
    const origin = options.origin === undefined ? `http://127.0.0.1:${port}` : options.origin;
    this.socket = new WebSocket(`ws://127.0.0.1:${port}${options.path ?? SOCKET_PATH}`, {
      headers: options.host === undefined ? {} : { Host: options.host },
      ...(origin === null ? {} : { origin }),
    });
    this.socket.on('message', (data, isBinary) => {
      if (isBinary) this.batches.push(new Uint8Array(data as Buffer));
      else this.frames.push(JSON.parse((data as Buffer).toString()));
      for (const wake of this.#waiters.splice(0)) wake();
    });
    this.ended = new Promise((resolve) => {
      this.socket.on('unexpected-response', (_request, response) => resolve({ status: response.statusCode ?? 0 }));
      this.socket.on('close', (code, reason) => resolve({ code, reason: reason.toString() }));
      this.socket.on('error', () => undefined);
    });
  }

  async opened(): Promise<this> {
    await new Promise((resolve) => this.socket.once('open', resolve));
    return this;
  }

  send(frame: unknown): void {
    this.socket.send(typeof frame === 'string' ? frame : JSON.stringify(frame));
  }

  /** The next text or binary frames until the condition holds. */
  async until(holds: () => boolean): Promise<void> {
    while (!holds()) await new Promise<void>((resolve) => this.#waiters.push(resolve));
  }

  async enter(claim: { ticket?: string; token?: string }): Promise<string> {
    await this.opened();
    this.send({ kind: 'enter', ...claim });
    await this.until(() => this.frames.length > 0);
    return (this.frames[0] as { token: string }).token;
  }
}
