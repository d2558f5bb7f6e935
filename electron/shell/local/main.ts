/** The local shell: the same app for a browser on this machine, where Electron's runtime cannot be had. */
import { Socket } from 'node:net';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { createRouter } from '../../bench/router.ts';
import { findPlaces } from '../../store/places.ts';
import { KeptSettings } from '../../store/settings.ts';
import { assembleBench } from '../assemble-bench.ts';
import { openLocalShell, type LocalShell } from './local-shell.ts';
import { openBrowser } from './open-browser.ts';

const port = readPort(process.env['PORT']);
const bench = await assembleBench({
  shell: 'local',
  settings: new KeptSettings(findPlaces().settings, () => new Date()),
  measureWorker: new URL('./measure-worker.js', import.meta.url),
});
const router = createRouter(bench, (problem) => console.error(problem.says));
const folder = path.resolve(fileURLToPath(new URL('../renderer', import.meta.url)));
const shell = await openLocalShell(bench, router, { folder, port }).catch(sayAndEnd);

printAddress(shell);
if (process.env['STICKWRIGHT_NO_BROWSER'] !== '1') void openBrowser(shell.newAddress());

// A page that lost its place needs a new address: each is good once.
process.stdin.on('data', () => printAddress(shell));
process.stdin.on('error', () => undefined);
// The bench does not live on because of a keyboard; a file or nothing as input has no such hold in the first place.
if (process.stdin instanceof Socket) process.stdin.unref();

for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => void end());

function printAddress(one: LocalShell): void {
  console.log(`Stickwright: ${one.newAddress()}`);
}

async function end(): Promise<void> {
  await shell.close();
  await bench.close();
  process.exit(0);
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
