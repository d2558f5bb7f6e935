import { appendFile, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { createSimulatedPad } from '../../../core/simulate/simulated-pad.ts';
import { openRecorder } from '../../../electron/store/recorder.ts';
import { openReplay, type ReplayPace, type ReplayTransport } from '../../../electron/transport/replay-transport.ts';
import { SimulatedTransport } from '../../../electron/transport/simulated-transport.ts';
import { FakeClock, settle } from '../../support/fake-clock.ts';
import { readLog } from '../../support/read-log.ts';
import { RecordingListener } from '../../support/recording-listener.ts';
import { simulatedHeader } from '../../support/simulated-header.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

/** A log of a simulated pad whose stick is turned, with one gap. */
async function recordedLog(seconds: number): Promise<string> {
  const file = path.join(await temporaryFolder(), 'turned.padlog');
  const clock = new FakeClock();
  const pad = createSimulatedPad('healthy', 3);
  const opened = await openRecorder(file, simulatedHeader(pad), { clock, startMicros: clock.micros() });
  if (!opened.ok) throw new Error(opened.problem.says);
  const recorder = opened.value;
  const transport = new SimulatedTransport('demo', pad, clock);
  transport.hand.does('left', 'circle');
  await transport.open({
    report: (at, id, payload) => recorder.report(at, id, payload),
    gap: (at, lost) => recorder.gap(at, lost),
    lost: () => undefined,
  });
  clock.pass(seconds * 500);
  recorder.gap(clock.micros(), 12);
  clock.pass(seconds * 500);
  await transport.close();
  await recorder.close();
  return file;
}

async function openedReplay(file: string, clock: FakeClock, pace: ReplayPace): Promise<ReplayTransport> {
  const replay = await openReplay(file, clock, pace);
  if (!replay.ok) throw new Error(replay.problem.says);
  return replay.value;
}

/** What was heard, with times from the opening: as `readLog` words it. */
function asInLog(listener: RecordingListener, opened: number): string[] {
  return listener.heard
    .filter((line) => !line.startsWith('lost'))
    .map((line) => line.replace(/^(\w+) (\d+)/, (_, kind, at) => `${String(kind)} ${Number(at) - opened}`));
}

/** However busy the machine is. */
const patience = { timeout: 20_000 };

describe('the replay of a report log', () => {
  it('says again every report and gap of the log, each at its time, and then that it ended', async () => {
    const file = await recordedLog(6);
    const clock = new FakeClock();
    const replay = await openedReplay(file, clock, 'unpaced');
    const listener = new RecordingListener();
    expect((await replay.open(listener)).ok).toBe(true);
    await expect.poll(() => listener.problems.length, patience).toBe(1);
    expect(listener.problems[0]?.code).toBe('replay-ended');
    const log = await readLog(file);
    expect(log.entries.length).toBeGreaterThan(5990);
    expect(asInLog(listener, clock.micros())).toEqual(log.entries.slice(1));
  });

  it('knows the pad and its descriptor from the header', async () => {
    const replay = await openedReplay(await recordedLog(0.01), new FakeClock(), 1);
    const pad = createSimulatedPad('healthy', 3);
    expect(replay.identity).toEqual({ ...pad.identity, unit: null });
    expect(replay.descriptor).toEqual(pad.descriptor);
  });

  it('keeps to its pace', async () => {
    const file = await recordedLog(2);
    for (const pace of [1, 4]) {
      const clock = new FakeClock();
      const replay = await openedReplay(file, clock, pace);
      const listener = new RecordingListener();
      const opened = clock.micros();
      await replay.open(listener);
      await expect.poll(() => clock.waiting, patience).toBe(1);
      for (let passed = 0; passed < 100; passed += 10) await clock.passSlowly(10);
      const toldMicros = (listener.reportTimes.at(-1) ?? 0) - opened;
      expect(toldMicros / pace).toBeGreaterThan(90_000);
      expect(toldMicros / pace).toBeLessThanOrEqual(100_000);
      await replay.close();
    }
  });

  it('tells nothing more once it is closed, waits for nothing, and begins anew when opened again', async () => {
    const file = await recordedLog(2);
    const clock = new FakeClock();
    const replay = await openedReplay(file, clock, 1);
    const listener = new RecordingListener();
    await replay.open(listener);
    const busy = await replay.open(new RecordingListener());
    expect(busy.ok ? null : busy.problem.code).toBe('pad-busy');
    await expect.poll(() => clock.waiting, patience).toBe(1);
    await clock.passSlowly(50);
    const told = listener.heard.length;
    expect(told).toBeGreaterThan(10);
    await replay.close();
    expect(clock.waiting).toBe(0);
    await clock.passSlowly(50);
    expect(listener.heard).toHaveLength(told);
    const again = new RecordingListener();
    const openedAgain = clock.micros();
    await replay.open(again);
    await expect.poll(() => clock.waiting, patience).toBe(1);
    await clock.passSlowly(50);
    expect(asInLog(again, openedAgain)[0]).toBe((await readLog(file)).entries[1]);
    await replay.close();
  });

  it('says nothing of the end of a log when it was closed before', async () => {
    const replay = await openedReplay(await recordedLog(0.05), new FakeClock(), 'unpaced');
    const listener = new RecordingListener();
    await replay.open({
      report: (...told) => {
        listener.report(...told);
        void replay.close();
      },
      gap: () => undefined,
      lost: (problem) => listener.lost(problem),
    });
    await expect.poll(() => listener.reportTimes.length, patience).toBe(1);
    await replay.close();
    await settle();
    expect(listener.heard).toHaveLength(1);
  });

  it('replays a log that was cut off to its last whole line, and says that it was cut', async () => {
    const file = await recordedLog(0.1);
    const whole = (await readLog(file)).entries.length;
    await appendFile(file, '["r",200000,1,"00');
    const replay = await openedReplay(file, new FakeClock(), 'unpaced');
    const listener = new RecordingListener();
    await replay.open(listener);
    await expect.poll(() => listener.problems.length, patience).toBe(1);
    expect(listener.heard).toHaveLength(whole);
    expect(listener.problems[0]?.says).toContain('cut off');
  });

  it('leaves damaged lines out, whether they are JSON or not, and says how many and where the first is', async () => {
    const file = await recordedLog(0.1);
    const lines = (await readFile(file, 'utf8')).split('\n');
    const reports = lines.flatMap((line, at) => (line.startsWith('["r"') ? [at] : []));
    const [first = 0, second = 0] = [reports[10], reports[12]];
    const whole = (await readLog(file)).entries.length;
    lines[first] = (lines[first] ?? '').slice(0, 9);
    lines[second] = (lines[second] ?? '').replace('"r"', '"s"');
    await writeFile(file, lines.join('\n'));
    const replay = await openedReplay(file, new FakeClock(), 'unpaced');
    const listener = new RecordingListener();
    await replay.open(listener);
    await expect.poll(() => listener.problems.length, patience).toBe(1);
    expect(listener.heard).toHaveLength(whole - 2);
    expect(listener.problems[0]).toMatchObject({ code: 'replay-ended' });
    expect(listener.problems[0]?.says).toContain(
      `2 lines of the log are damaged and left out, the first is line ${String(first + 1)}: `,
    );
  });

  it('says what stands in its way: no file, no log, a damaged line', async () => {
    const folder = await temporaryFolder();
    const clock = new FakeClock();
    const missing = await openReplay(path.join(folder, 'none.padlog'), clock, 1);
    expect(missing.ok ? null : missing.problem.code).toBe('file-missing');
    const other = path.join(folder, 'other.padlog');
    await writeFile(other, 'a letter\n');
    const refused = await openReplay(other, clock, 1);
    expect(refused.ok ? null : refused.problem.code).toBe('log-not-a-log');
    const empty = path.join(folder, 'empty.padlog');
    await writeFile(empty, '');
    const nothing = await openReplay(empty, clock, 1);
    expect(nothing.ok ? null : nothing.problem.code).toBe('log-empty');

    const damaged = await recordedLog(0.1);
    const lines = (await readFile(damaged, 'utf8')).split('\n');
    lines[50] = '["r",-3,1,"00"]';
    await writeFile(damaged, lines.join('\n'));
    const replay = await openedReplay(damaged, clock, 'unpaced');
    const listener = new RecordingListener();
    await replay.open(listener);
    await expect.poll(() => listener.problems.length, patience).toBe(1);
    expect(listener.problems[0]).toMatchObject({ at: 51 });
    expect(listener.heard).toHaveLength(50);
    await settle();
    expect(listener.problems).toHaveLength(1);
  });
});
