/** The log that benchmarks measure: a whole survey of a simulated pad, made by the built command line. */
import { spawnSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import path from 'node:path';

const root = path.resolve(import.meta.dirname, '../..');

/** Path of the log, about 100 s of both sticks at 1,000 Hz; the same each time. */
export function makeSurveyLog(): string {
  const log = path.join(root, 'out/perf/survey.padlog');
  mkdirSync(path.dirname(log), { recursive: true });
  const args = ['survey', '--demo', 'healthy', '--seed', '1', '--out', log, '--force'];
  const made = spawnSync(process.execPath, [path.join(root, 'out/main/command-line.js'), ...args]);
  if (made.status !== 0) throw new Error(String(made.stderr));
  return log;
}
