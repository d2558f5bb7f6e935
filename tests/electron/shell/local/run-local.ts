/** Runs the built local shell as processes of a test file, in a data folder of their own. */
import { spawn, type ChildProcess, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { ensureBuilt, outFile } from '../built.ts';

export interface LocalRun {
  readonly child: ChildProcessWithoutNullStreams;
  readonly ended: Promise<{ code: number | null; stdout: string; stderr: string }>;
  readonly stderr: () => string;
  /** Waits for so many printed addresses. */
  readonly addresses: (count: number) => Promise<URL[]>;
}

export const ticketOf = (address: URL): string => address.hash.replace('#ticket=', '');

export interface LocalRuns {
  /** The data folder of them all. */
  readonly folder: string;
  readonly start: (env?: Record<string, string>, stdin?: 'pipe' | 'ignore') => LocalRun;
}

/** Call it where a test file begins: builds first, and ends what its tests started. */
export function localRuns(): LocalRuns {
  const folder = mkdtempSync(path.join(tmpdir(), 'stickwright-local-'));
  const children = new Set<ChildProcess>();
  beforeAll(() => ensureBuilt(), 180_000);
  afterEach(() => {
    for (const child of children) child.kill('SIGKILL');
    children.clear();
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return {
    folder,
    start(env = {}, stdin = 'pipe') {
      const child = spawn(process.execPath, [outFile('main/local.js')], {
        env: { ...process.env, STICKWRIGHT_NO_BROWSER: '1', STICKWRIGHT_HOME: folder, PORT: '0', ...env },
        stdio: [stdin, 'pipe', 'pipe'],
      }) as ChildProcessWithoutNullStreams;
      children.add(child);
      let stdout = '';
      let stderr = '';
      child.stdout.on('data', (part: Buffer) => (stdout += part.toString()));
      child.stderr.on('data', (part: Buffer) => (stderr += part.toString()));
      const ended = new Promise<{ code: number | null; stdout: string; stderr: string }>((resolve) => {
        child.on('close', (code) => resolve({ code, stdout, stderr }));
      });
      return {
        child,
        ended,
        stderr: () => stderr,
        async addresses(count) {
          const found = (): string[] => stdout.match(/http:\S+/gu) ?? [];
          await expect.poll(() => found().length, { timeout: 60_000 }).toBe(count);
          return found().map((address) => new URL(address));
        },
      };
    },
  };
}
