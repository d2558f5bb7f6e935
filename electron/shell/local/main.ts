/** The local shell: the same app for a browser on this machine, where Electron's runtime cannot be had. */
import { Socket } from 'node:net';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { createRouter } from '../../bench/calls/router.ts';
import { openFaultLog } from '../../store/fault-log.ts';
import { findPlaces } from '../../store/places.ts';
import { KeptSettings } from '../../store/settings.ts';
import { assembleBench } from '../assemble-bench.ts';
import { Closing, hearSignals, untilClosing, wordsOf } from '../closing.ts';
import { makeDoor } from './doorway.ts';
import { openLocalShell, type LocalShell } from './local-shell.ts';
import { openBrowser } from './open-browser.ts';

// A terminal that was closed takes no words any more; that must not end what is under way.
for (const stream of [process.stdin, process.stdout, process.stderr]) stream.on('error', () => undefined);

const port = readPort(process.env['PORT']);
const places = findPlaces();
const faults = openFaultLog(places.data);
const bench = await assembleBench({
  shell: 'local',
  settings: new KeptSettings(places.settings, () => new Date()),
  measureWorker: new URL('./measure-worker.js', import.meta.url),
});
const router = createRouter(bench, (problem) => console.error(problem.says));
const folder = path.resolve(fileURLToPath(new URL('../renderer', import.meta.url)));
const shell = await openLocalShell(
  bench,
  untilClosing(router, () => closing.isClosing),
  { folder, port },
).catch(sayAndEnd);

const closing: Closing = new Closing({
  // Surveys end with their marks, a write is rolled back, and the pages hear of it before their sockets end.
  steps: [() => bench.close(), () => shell.close()],
  say: (line) => console.error(line),
  note: (thrown) => faults.note('local shell', thrown),
  exit: (code) => process.exit(code),
  millis: () => performance.now(),
});
hearSignals(() => closing.signal());
process.on('uncaughtException', (thrown) => closing.fault(thrown));
process.on('unhandledRejection', (thrown) => closing.fault(thrown));

printAddress(shell);
if (process.env['STICKWRIGHT_NO_BROWSER'] !== '1') showInBrowser(shell);

// A page that lost its place needs a new address: each is good once.
process.stdin.on('data', () => printAddress(shell));
// The bench does not live on because of a keyboard; a file or nothing as input has no such hold in the first place.
if (process.stdin instanceof Socket) process.stdin.unref();

function printAddress(one: LocalShell): void {
  console.log(`Stickwright: ${one.newAddress()}`);
}

/** The address was printed anyway: where the file cannot be made, nothing is opened. */
function showInBrowser(one: LocalShell): void {
  try {
    void openBrowser(makeDoor(path.join(places.data, 'doorway'), (gone) => one.newAddress(gone)));
  } catch (thrown) {
    console.error(`The browser is not opened by itself (${wordsOf(thrown)}); open the address above.`);
  }
}

function readPort(text: string | undefined): number {
  const given = text === undefined || text === '' ? 0 : Number(text);
  if (Number.isInteger(given) && given >= 0 && given <= 65_535) return given;
  console.error(`PORT is ${text ?? ''}; give a number from 0 to 65535, 0 for any that is free.`);
  process.exit(2);
}

async function sayAndEnd(thrown: unknown): Promise<never> {
  const code = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : String(thrown);
  console.error(
    code === 'EADDRINUSE'
      ? `Port ${port} is taken; end the program that uses it, or set PORT to another.`
      : `The page cannot be served (${code}); set PORT to another number.`,
  );
  await bench.close();
  process.exit(1);
}
