/** The built local shell as a process of its own: a free port, an empty folder for its data, an address for each page. */
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { createInterface } from 'node:readline';

export interface RunningBench {
  /** Lets one page in, once. */
  newAddress(): Promise<string>;
  stop(): Promise<void>;
}

const LOCAL_SHELL = path.resolve(import.meta.dirname, '../../../out/main/local.js');

export async function startBench(): Promise<RunningBench> {
  const home = await mkdtemp(path.join(tmpdir(), 'stickwright-browser-'));
  const shell = spawn(process.execPath, [LOCAL_SHELL], {
    env: { ...process.env, PORT: '0', STICKWRIGHT_HOME: home, STICKWRIGHT_NO_BROWSER: '1' },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const lines = createInterface({ input: shell.stdout })[Symbol.asyncIterator]();
  const nextAddress = async (): Promise<string> => {
    for (;;) {
      const line = await lines.next();
      if (line.done === true) throw new Error('The local shell ended before it printed an address.');
      const address = /https?:\S+/u.exec(line.value)?.[0];
      if (address !== undefined) return address;
    }
  };
  await nextAddress();
  return {
    async newAddress() {
      shell.stdin.write('\n');
      return nextAddress();
    },
    async stop() {
      const ended = new Promise((resolve) => shell.once('exit', resolve));
      shell.kill('SIGTERM');
      await ended;
      await rm(home, { recursive: true, force: true });
    },
  };
}
