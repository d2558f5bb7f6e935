/**
 * What an extra minute of log costs `measure`: seconds and peak memory of the whole process for 1, 2, 5 and 10 minutes of a simulated
 * survey at 1,000 Hz, median of three. Flat means that the last figures are alike. Run after a build: `node tests/perf/measure-growth.ts`.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { makeSurveyLog } from './survey-log.ts';

const commandLine = path.resolve(import.meta.dirname, '../../out/main/command-line.js');
const MINUTES = [1, 2, 5, 10];
const RUNS = 3;
const TELL_MEMORY =
  'data:text/javascript,process.on("exit",()=>process.stderr.write(`\\npeak ${process.resourceUsage().maxRSS}\\n`))';

const survey = makeSurveyLog();
const [header = '', ...lines] = readFileSync(survey, 'utf8').trimEnd().split('\n');
const times = lines.map((line) => Number(/^\["\w+",(\d+)/.exec(line)?.[1] ?? 0));
const length = (times.at(-1) ?? 0) + 1000;

/** The survey again and again, cut off after so many minutes. */
function makeLog(minutes: number): string {
  const log = path.join(path.dirname(survey), `minutes-${minutes}.padlog`);
  const kept: string[] = [header];
  for (let copy = 0; copy * length < minutes * 60e6; copy += 1) {
    for (const [index, line] of lines.entries()) {
      const t = (times[index] ?? 0) + copy * length;
      if (t <= minutes * 60e6) kept.push(line.replace(/^(\["\w+",)\d+/, `$1${t}`));
    }
  }
  writeFileSync(log, `${kept.join('\n')}\n`);
  return log;
}

function timed(log: string): { seconds: number; peak: number } {
  const from = performance.now();
  const run = spawnSync(process.execPath, ['--import', TELL_MEMORY, commandLine, 'measure', log, '--json'], {
    maxBuffer: 1e9,
  });
  if (run.status !== 0) throw new Error(String(run.stderr));
  return {
    seconds: (performance.now() - from) / 1000,
    peak: Number(/peak (\d+)/.exec(String(run.stderr))?.[1]) / 1024,
  };
}

function median(values: number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

const found = MINUTES.map((minutes) => {
  const log = makeLog(minutes);
  const runs = Array.from({ length: RUNS }, () => timed(log));
  return { minutes, seconds: median(runs.map((run) => run.seconds)), peak: median(runs.map((run) => run.peak)) };
});
const extra = found.slice(1).map((here, i) => {
  const before = found[i] ?? here;
  return [`extraMinuteTo${here.minutes}Seconds`, (here.seconds - before.seconds) / (here.minutes - before.minutes)];
});
console.log(
  JSON.stringify({
    figure: 'measure, cost of an extra minute of log at 1,000 Hz',
    ...Object.fromEntries(found.map(({ minutes, seconds }) => [`minutes${minutes}Seconds`, seconds])),
    ...Object.fromEntries(extra),
    ...Object.fromEntries(found.map(({ minutes, peak }) => [`minutes${minutes}PeakMebibytes`, Math.round(peak)])),
  }),
);
