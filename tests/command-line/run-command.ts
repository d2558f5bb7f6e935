/** Runs the built command line as a process of its own, as a script would. */
import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { outFile } from '../electron/shell/built.ts';
import { runNode, type Ran } from '../electron/shell/run-node.ts';
import { temporaryFolder } from '../support/temporary-folder.ts';

/** The data folder where a test names none: what a developer keeps in his own must not decide, nor be touched. */
const HOME = path.join(tmpdir(), `stickwright-tests-${String(process.pid)}`);

export function stickwright(args: readonly string[], input?: string): Promise<Ran> {
  const env = { STICKWRIGHT_HOME: process.env['STICKWRIGHT_HOME'] ?? HOME };
  return runNode([outFile('main/command-line.js'), ...args], input === undefined ? { env } : { env, input });
}

/** The objects of a run that prints one JSON value a line. */
export function jsonLines<T>(ran: Ran): T[] {
  return ran.stdout
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as T);
}

/** A file of that content in a folder of its own. */
export async function fileOf(name: string, content: string | Uint8Array): Promise<string> {
  const file = path.join(await temporaryFolder(), name);
  await writeFile(file, content);
  return file;
}

/** One line on standard error, made of sentences, without a trace of the program's inside. */
export const ONE_LINE = /^stickwright: [^\n]+\.\n$/u;
