/**
 * `measure` on a log of ten minutes at 1,000 Hz: seconds of the whole process and its peak memory, median of several runs,
 * beside the time that Node itself takes to start. The log is the survey of a simulated pad, three times over.
 * Run after a build: `node tests/perf/measure-log.ts`.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { makeSurveyLog } from './survey-log.ts';

const root = path.resolve(import.meta.dirname, '../..');
const commandLine = path.join(root, 'out/main/command-line.js');
const RUNS = 5;
const REPEATS = 3;
const TELL_MEMORY =
  'data:text/javascript,process.on("exit",()=>process.stderr.write(`\\npeak ${process.resourceUsage().maxRSS}\\n`))';

function makeLog(): string {
  const survey = makeSurveyLog();
  const long = path.join(path.dirname(survey), 'ten-minutes.padlog');
  const [header = '', ...lines] = readFileSync(survey, 'utf8').trimEnd().split('\n');
  const times = lines.map((line) => Number(/^\["\w+",(\d+)/.exec(line)?.[1] ?? 0));
  const length = (times.at(-1) ?? 0) + 1000;
  const copies = Array.from({ length: REPEATS }, (_, copy) =>
    lines.map((line, index) => line.replace(/^(\["\w+",)\d+/, `$1${(times[index] ?? 0) + copy * length}`)).join('\n'),
  );
  writeFileSync(long, `${[header, ...copies].join('\n')}\n`);
  return long;
}

function timed(args: readonly string[]): { seconds: number; peakKib: number; out: string } {
  const from = performance.now();
  const run = spawnSync(process.execPath, ['--import', TELL_MEMORY, ...args], { maxBuffer: 1e9 });
  const seconds = (performance.now() - from) / 1000;
  if (run.status !== 0) throw new Error(String(run.stderr));
  return { seconds, peakKib: Number(/peak (\d+)/.exec(String(run.stderr))?.[1]), out: String(run.stdout) };
}

function median(values: number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

const log = makeLog();
const runs = Array.from({ length: RUNS }, () => ({
  measure: timed([commandLine, 'measure', log, '--json']),
  start: timed(['-e', '0']),
}));
const first = JSON.parse(runs[0]?.measure.out ?? '{}') as { log?: { reports: number; durationUs: number } };
console.log(
  JSON.stringify({
    figure: 'measure on a ten-minute log at 1,000 Hz',
    reports: first.log?.reports,
    minutes: (first.log?.durationUs ?? 0) / 60e6,
    seconds: median(runs.map(({ measure }) => measure.seconds)),
    nodeStartSeconds: median(runs.map(({ start }) => start.seconds)),
    peakMebibytes: Math.round(median(runs.map(({ measure }) => measure.peakKib)) / 1024),
  }),
);
