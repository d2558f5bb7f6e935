import { EventEmitter } from 'node:events';
import type { BrowserWindow } from 'electron';
import { expect, it, vi } from 'vitest';
import { standInBench } from './stand-in-bench.ts';

const asked = vi.hoisted(() => ({ started: 0, stopped: 0, said: 0 }));
vi.mock('electron', () => ({
  powerSaveBlocker: { start: () => (asked.started += 1), stop: () => (asked.stopped += 1) },
  dialog: { showMessageBox: () => Promise.resolve((asked.said += 1)) },
}));

it('keeps the window open and the machine awake while a pad is written to, and no longer', async () => {
  const { guardWriting } = await import('../../../electron/shell/electron/writing-guard.ts');
  const bench = standInBench();
  const window = new EventEmitter();
  guardWriting(bench, window as unknown as BrowserWindow);
  const close = (): boolean => {
    let isPrevented = false;
    window.emit('close', { preventDefault: () => (isPrevented = true) });
    return isPrevented;
  };
  expect(close()).toBe(false);
  bench.tell('memory.state', { pad: 'pad-1', writing: true });
  bench.tell('memory.state', { pad: 'pad-1', writing: true });
  expect(close()).toBe(true);
  expect(asked).toEqual({ started: 1, stopped: 0, said: 1 });
  bench.tell('memory.state', { pad: 'pad-1', writing: false });
  expect(close()).toBe(false);
  expect(asked).toEqual({ started: 1, stopped: 1, said: 1 });
});
