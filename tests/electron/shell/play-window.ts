/** Plays what a user saves from the window, and everything of it that can break. */
import { mkdtemp, readdir, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { app, record, type BrowserWindow } from './electron-stand-in.ts';

const OWN = 'app://bench/';

/** Saves by the channel of the page; `url` is where the sender stands. */
function save(window: BrowserWindow, name: unknown, bytes: unknown, url = OWN): unknown {
  const event = { sender: window.webContents, senderFrame: { url, parent: null } };
  return record.invokable.get('bench.save')?.(event, name, bytes);
}

export async function playSaving(window: BrowserWindow): Promise<Record<string, unknown>> {
  const folder = await mkdtemp(path.join(tmpdir(), 'stickwright-save-'));
  const file = path.join(folder, 'chosen.csv');
  const bytes = new TextEncoder().encode('one,two\n');
  record.dialogs.length = 0;
  const cancelled = await save(window, '../../a:b?.csv', bytes);
  const offered = [...record.dialogs];
  const none = await readdir(folder);
  record.answers.save = { canceled: false, filePath: file };
  const saved = await save(window, 'table.csv', bytes);
  const text = await readFile(file, 'utf8');
  const stranger = await save(window, 'table.csv', bytes, 'https://bench.example/');
  const wrong = [await save(window, 7, bytes), await save(window, 'a', 'text')];
  const dialogs = record.dialogs.length;
  record.answers.save = { canceled: false, filePath: path.join(folder, 'nowhere', 'a.csv') };
  const failed = await save(window, 'table.csv', bytes);
  return { cancelled, offered, none, saved, text, stranger, wrong, dialogs, failed, left: await readdir(folder) };
}

/** One turn of the event loop: a dialogue was answered meanwhile. */
const answered = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

export async function playBreaking(window: BrowserWindow): Promise<Record<string, unknown>> {
  record.dialogs.length = 0;
  for (let count = 0; count < 5; count += 1) {
    window.webContents.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 9 });
    await answered();
  }
  window.webContents.emit('render-process-gone', {}, { reason: 'clean-exit', exitCode: 0 });
  const reloads = record.reloads;
  app.emit('child-process-gone', {}, { type: 'GPU', reason: 'killed', exitCode: 15 });
  await answered();
  window.emit('unresponsive');
  await answered();
  const waited = record.reloads - reloads;
  record.answers.response = 1;
  window.emit('unresponsive');
  await answered();
  const loadedAgain = record.reloads - reloads - waited;
  setImmediate(() => {
    throw new Error('thrown by a test');
  });
  await answered();
  await answered();
  void Promise.reject(new Error('rejected by a test'));
  await answered();
  await answered();
  const messages = record.dialogs.map((options) => (options as { message: string }).message);
  const hello = await record.invokable.get('bench.call')?.(
    { sender: window.webContents, senderFrame: { url: OWN, parent: null } },
    'bench.hello',
    {},
  );
  return { reloads, waited, loadedAgain, messages, hello };
}
