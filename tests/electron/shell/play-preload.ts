/** Loads the built preload over the stand-in, uses what it gives the page, and prints what came of it. */
import { createRequire } from 'node:module';
import './replace-electron.ts';
import { ipcRenderer, record } from './electron-stand-in.ts';

const messages: unknown[][] = [];
Object.assign(globalThis, { window: { postMessage: (...args: unknown[]) => messages.push(args) } });
createRequire(import.meta.url)('../../../out/preload/preload.cjs');

const bench = record.exposed.get('bench') as unknown as {
  call(name: unknown, request: unknown): Promise<unknown>;
  listen(name: unknown, hear: (...heard: unknown[]) => void): () => void;
  save(name: unknown, bytes: unknown): Promise<unknown>;
  openSamples(): Promise<unknown>;
};
const heard: unknown[][] = [];
const end = bench.listen('pads.changed', (...args) => heard.push(args));
bench.listen('constructor', (...args) => heard.push(['never', ...args]));
ipcRenderer.emit('bench.event', { sender: 'never shown' }, 'pads.changed', [1]);
ipcRenderer.emit('bench.event', { sender: 'never shown' }, 'constructor', [2]);
end();
ipcRenderer.emit('bench.event', { sender: 'never shown' }, 'pads.changed', [3]);
ipcRenderer.emit('bench.samples', { ports: ['port'] });

process.stdout.write(
  JSON.stringify({
    worlds: [...record.exposed.keys()],
    names: Object.keys(bench),
    kinds: Object.values(bench).map((value) => typeof value),
    known: await bench.call('pads.list', {}),
    unknown: await bench.call('no.such.call', {}),
    inherited: await bench.call('toString', {}),
    saved: await bench.save('a.csv', 'bytes'),
    samples: await bench.openSamples(),
    heard,
    messages,
  }),
);
