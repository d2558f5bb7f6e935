/**
 * Work a frame and frames dropped on the Workbench while a simulated pad streams 1,000 reports a second: main-thread tasks
 * of the page as Chromium's own trace tells them, summed between neighbouring animation frames, without and with a nudge each
 * 100 ms; and the page's heap over ten simulated minutes of such nudges, done as fast as they can be. And the time from starting
 * the local shell to the first reading on the screen. Run after a build: `node tests/perf/workbench-frames.ts`.
 */
import { chromium, type Browser, type CDPSession, type Page } from '@playwright/test';
import { openLog } from '../browser/support/open-log.ts';
import { startBench } from '../browser/support/running-bench.ts';
import { makeSurveyLog } from './survey-log.ts';

const SECONDS = 10;
const FRAME_MILLIS = 1000 / 60;
const NUDGE_MILLIS = 100;
/** Ten minutes of them. */
const NUDGES = 6000;

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly dur?: number;
  /** Time of the processor: what another program took meanwhile is not in it. */
  readonly tdur?: number;
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
  tellFrames('Workbench while 1,000 reports a second stream', await traced(session, page, false));
  await page.getByText(/^Predicted/u).waitFor();
  await page.getByRole('slider', { name: 'x maximum' }).press('ArrowLeft');
  await page.waitForTimeout(1000);
  tellFrames('Workbench while they stream, with a nudge each 100 ms', await traced(session, page, true));
  await heapOverTenMinutes(session, page);
  await page.close();
  await bench.stop();
}

function tellFrames(figure: string, [events, frames]: [TraceEvent[], number[]]): void {
  const tasks = pageTasks(events);
  const each = (busy: (task: Task) => number): number[] =>
    frames.slice(1).map((end, index) => {
      const start = frames[index] ?? end;
      return tasks.reduce((sum, task) => sum + overlap(task, start, end) * busy(task), 0);
    });
  const [work, processor] = [each(() => 1), each((task) => task.busy)];
  const apart = frames.slice(1).map((end, index) => (end - (frames[index] ?? end)) / 1000);
  const dropped = apart.reduce((sum, millis) => sum + Math.max(0, Math.round(millis / FRAME_MILLIS) - 1), 0);
  console.log(
    JSON.stringify({
      figure,
      frames: frames.length,
      workP50Millis: quantile(work, 0.5) / 1000,
      workP95Millis: quantile(work, 0.95) / 1000,
      processorP95Millis: quantile(processor, 0.95) / 1000,
      droppedShare: dropped / (frames.length + dropped),
    }),
  );
}

/** Keys over a mark, one after the other, there and back; the heap after each fifth of them. */
async function heapOverTenMinutes(session: CDPSession, page: Page): Promise<void> {
  const heap: number[] = [];
  for (let fifth = 0; fifth <= 5; fifth += 1) {
    await session.send('HeapProfiler.collectGarbage');
    const { usedSize } = await session.send('Runtime.getHeapUsage');
    heap.push(usedSize / 2 ** 20);
    if (fifth < 5) await page.evaluate(nudgeMany, NUDGES / 5);
  }
  console.log(
    JSON.stringify({
      figure: 'heap of the page over ten simulated minutes of nudges while reports stream',
      nudges: NUDGES,
      ...Object.fromEntries(heap.map((mebibytes, fifth) => [`after${String(fifth * 2)}MinutesMebibytes`, mebibytes])),
    }),
  );
}

/** Runs in the page: as many keys as asked for, each after the frame before it. */
async function nudgeMany(nudges: number): Promise<void> {
  const mark = document.querySelector('[role="slider"][aria-label="x maximum"]');
  for (let done = 0; done < nudges; done += 1) {
    const key = done % 8 < 4 ? 'ArrowLeft' : 'ArrowRight';
    mark?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
    // A message is sooner than a frame: ten minutes would take ten minutes.
    await new Promise<void>((resolve) => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => resolve();
      channel.port2.postMessage(null);
    });
  }
}

/** The trace, and the times of the animation frames on the trace's own clock. */
async function traced(session: CDPSession, page: Page, nudged: boolean): Promise<[TraceEvent[], number[]]> {
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.start', {
    transferMode: 'ReportEvents',
    traceConfig: { includedCategories: ['toplevel', 'devtools.timeline', 'blink.user_timing'] },
  });
  await page.evaluate(
    async ([seconds, nudgeMillis]) => {
      const end = performance.now() + seconds * 1000;
      let nudges = 0;
      const mark = document.querySelector('[role="slider"][aria-label="x maximum"]');
      const timer =
        nudgeMillis === 0
          ? 0
          : setInterval(() => {
              nudges += 1;
              const key = nudges % 20 < 10 ? 'ArrowLeft' : 'ArrowRight';
              mark?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }));
            }, nudgeMillis);
      await new Promise<void>((resolve) => {
        const tick = (): void => {
          performance.mark('bench-frame');
          if (performance.now() < end) requestAnimationFrame(tick);
          else resolve();
        };
        requestAnimationFrame(tick);
      });
      clearInterval(timer);
    },
    [SECONDS, nudged ? NUDGE_MILLIS : 0] as const,
  );
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

interface Task {
  readonly from: number;
  readonly to: number;
  /** Share of it that the processor spent on it. */
  readonly busy: number;
}

/** Tasks of the thread that the page's own marks come from, in microseconds. */
function pageTasks(events: readonly TraceEvent[]): Task[] {
  const mark = events.find(({ name }) => name === 'bench-frame');
  return events
    .filter(({ name, ph, tid, pid }) => ph === 'X' && /RunTask/.test(name) && tid === mark?.tid && pid === mark.pid)
    .map(({ ts, dur = 0, tdur = dur }) => ({ from: ts, to: ts + dur, busy: dur === 0 ? 0 : Math.min(1, tdur / dur) }));
}

function overlap(task: Task, start: number, end: number): number {
  return Math.max(0, Math.min(task.to, end) - Math.max(task.from, start));
}

function quantile(values: number[], p: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * p))] ?? Number.NaN;
}
