/**
 * Work a frame and frames dropped on the Workbench while a simulated pad streams 1,000 reports a second: main-thread tasks
 * of the page as Chromium's own trace tells them, summed between neighbouring animation frames. And the time from starting
 * the local shell to the first reading on the screen. Run after a build: `node tests/perf/workbench-frames.ts`.
 */
import { chromium, type Browser, type CDPSession, type Page } from '@playwright/test';
import { openLog } from '../browser/support/open-log.ts';
import { startBench } from '../browser/support/running-bench.ts';
import { makeSurveyLog } from './survey-log.ts';

const SECONDS = 10;
const FRAME_MILLIS = 1000 / 60;

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly dur?: number;
  readonly tid: number;
  readonly pid: number;
}

const browser = await chromium.launch({
  executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
});
await startToFirstReading(browser);
await framesOfWorkbench(browser);
await browser.close();

async function startToFirstReading(running: Browser): Promise<void> {
  const page = await running.newPage();
  const from = performance.now();
  const bench = await startBench();
  await page.goto(await bench.newAddress());
  await page.getByRole('status', { name: 'raw count' }).filter({ hasText: /\d/ }).first().waitFor();
  console.log(
    JSON.stringify({
      figure: 'start of the local shell to the first raw count on the screen',
      seconds: (performance.now() - from) / 1000,
    }),
  );
  await page.close();
  await bench.stop();
}

async function framesOfWorkbench(running: Browser): Promise<void> {
  const bench = await startBench();
  const page = await running.newPage({ viewport: { width: 1280, height: 800 } });
  await page.goto(await bench.newAddress());
  await page
    .getByText(/\d+ reports\/s/)
    .first()
    .waitFor();
  await openLog(page, makeSurveyLog());
  await page.waitForTimeout(3000); // The first drawing is not what is measured.
  const session = await page.context().newCDPSession(page);
  const [events, frames] = await traced(session, page);
  const tasks = pageTasks(events);
  const work = frames.slice(1).map((end, index) => {
    const start = frames[index] ?? end;
    return tasks.reduce((sum, task) => sum + overlap(task, start, end), 0);
  });
  const apart = frames.slice(1).map((end, index) => (end - (frames[index] ?? end)) / 1000);
  const dropped = apart.reduce((sum, millis) => sum + Math.max(0, Math.round(millis / FRAME_MILLIS) - 1), 0);
  console.log(
    JSON.stringify({
      figure: 'Workbench while 1,000 reports a second stream',
      frames: frames.length,
      workP50Millis: quantile(work, 0.5) / 1000,
      workP95Millis: quantile(work, 0.95) / 1000,
      droppedShare: dropped / (frames.length + dropped),
    }),
  );
  await page.close();
  await bench.stop();
}

/** The trace, and the times of the animation frames on the trace's own clock. */
async function traced(session: CDPSession, page: Page): Promise<[TraceEvent[], number[]]> {
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel', 'devtools.timeline', 'blink.user_timing'] },
  });
  await page.evaluate(async (seconds) => {
    const end = performance.now() + seconds * 1000;
    await new Promise<void>((resolve) => {
      const tick = (): void => {
        performance.mark('bench-frame');
        if (performance.now() < end) requestAnimationFrame(tick);
        else resolve();
      };
      requestAnimationFrame(tick);
    });
  }, SECONDS);
  await session.send('Tracing.end');
  await complete;
  return [
    events,
    events
      .filter(({ name }) => name === 'bench-frame')
      .map(({ ts }) => ts)
      .toSorted((a, b) => a - b),
  ];
}

/** Tasks of the thread that the page's own marks come from, in microseconds. */
function pageTasks(events: readonly TraceEvent[]): { from: number; to: number }[] {
  const mark = events.find(({ name }) => name === 'bench-frame');
  return events
    .filter(({ name, ph, tid, pid }) => ph === 'X' && /RunTask/.test(name) && tid === mark?.tid && pid === mark.pid)
    .map(({ ts, dur = 0 }) => ({ from: ts, to: ts + dur }));
}

function overlap(task: { from: number; to: number }, start: number, end: number): number {
  return Math.max(0, Math.min(task.to, end) - Math.max(task.from, start));
}

function quantile(values: number[], p: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * p))] ?? Number.NaN;
}
