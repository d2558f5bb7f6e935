/** The bench that the memory commands call, in this process. */
import { setTimeout as pause } from 'node:timers/promises';
import { expect, it, vi } from 'vitest';
import { atMemoryBench } from '../../electron/shell/command-line/memory-bench.ts';
import { readPad } from '../../electron/shell/command-line/memory-read.ts';
import type { Terminal } from '../../electron/shell/command-line/terminal.ts';
import { valueOf } from '../electron/bench/make-bench.ts';
import { fromPad } from '../support/fault-pad.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';
import { wished } from './memory-commands.ts';

/** Of a full disk or a busy machine; virtual time would pass by minutes meanwhile. */
const SLOW_MILLIS = 3_000;

it('keeps a confirmation of a simulated pad good while the disk takes its time', async () => {
  vi.stubEnv('STICKWRIGHT_HOME', await temporaryFolder());
  const said: string[] = [];
  const terminal: Terminal = {
    json: true,
    verbose: true,
    print: () => Promise.resolve(),
    say: (text) => void said.push(text),
  };
  const code = await atMemoryBench(terminal, { demo: 'healthy' }, async (bench) => {
    const { pad } = bench;
    const read = valueOf(await readPad(bench, undefined));
    const wish = { store: { layer: 'user' as const, mappings: wished, from: fromPad('healthy-kept') } };
    const { plan } = valueOf(await bench.handle('images.plan', { ...read, wish }));
    valueOf(await bench.handle('memory.allow', { pad, writing: true }));
    const { token } = valueOf(await bench.handle('memory.preview', { pad, wish: { plan } }));
    await pause(SLOW_MILLIS);
    const ended = await bench.play(() => bench.handle('memory.write', { pad, token }));
    expect(valueOf(ended)).toMatchObject({ end: 'after', problem: null });
    return 0;
  });
  expect(code, said.join('\n')).toBe(0);
  vi.unstubAllEnvs();
});
