/** Report logs of simulated pads, made by the built command line: the same seed gives the same log. */
import { execFile } from 'node:child_process';
import { mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';

const COMMAND_LINE = path.resolve(import.meta.dirname, '../../../out/main/command-line.js');

/** A survey of a simulated pad, as a file. Further arguments are those of `survey`. */
export async function makeDemoLog(demo: string, ...more: readonly string[]): Promise<string> {
  const file = path.join(await mkdtemp(path.join(tmpdir(), 'stickwright-log-')), `${demo}.padlog`);
  // The first pad of that name that the app plugs in: a survey of the one in hand.
  const seed = more.includes('--seed') ? [] : ['--seed', '1'];
  const all = [COMMAND_LINE, 'survey', '--demo', demo, ...seed, '--stage', 'fitted', '--out', file, ...more];
  await promisify(execFile)(process.execPath, all);
  return file;
}

/** The log up to the line that holds a word, as if it had been cut off there. */
export async function cutBefore(file: string, word: string): Promise<string> {
  const lines = (await readFile(file, 'utf8')).split('\n');
  const at = lines.findIndex((line) => line.includes(word));
  if (at < 0) throw new Error(`The log has no line with ${word}.`);
  const cut = file.replace('.padlog', '-cut.padlog');
  await writeFile(cut, `${lines.slice(0, at).join('\n')}\n`);
  return cut;
}
