import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { readFile, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { Problem } from '../../../core/result.ts';
import { createSimulatedPad } from '../../../core/simulate/simulated-pad.ts';
import { openRecorder, type Recorder } from '../../../electron/store/recorder.ts';
import { systemFiles, type LogFiles } from '../../../electron/store/log-files.ts';
import { failingFiles } from '../../support/failing-files.ts';
import { FakeClock } from '../../support/fake-clock.ts';
import { readLog } from '../../support/read-log.ts';
import { simulatedHeader } from '../../support/simulated-header.ts';
import { temporaryFolder } from '../../support/temporary-folder.ts';

const header = simulatedHeader(createSimulatedPad('healthy', 1));

interface Session {
  readonly file: string;
  readonly clock: FakeClock;
  readonly start: number;
  readonly problems: Problem[];
}

async function session(): Promise<Session> {
  const clock = new FakeClock();
  return { file: path.join(await temporaryFolder(), 'a.padlog'), clock, start: clock.micros(), problems: [] };
}

async function record({ file, clock, start, problems }: Session, files?: LogFiles): Promise<Recorder> {
  const opened = await openRecorder(file, header, {
    clock,
    startMicros: start,
    onProblem: (problem) => problems.push(problem),
    ...(files === undefined ? {} : { files }),
  });
  if (!opened.ok) throw new Error(opened.problem.says);
  return opened.value;
}

function reportMany(recorder: Recorder, start: number, count: number): void {
  for (let n = 0; n < count; n += 1) recorder.report(start + 1000 * n, 1, Uint8Array.of(n & 255, n >> 8));
}

describe('the recorder', () => {
  it('writes the header first and every entry in its order, in micros from the start', async () => {
    const at = await session();
    const recorder = await record(at);
    recorder.sent(at.start + 10, 2, Uint8Array.of(1));
    recorder.report(at.start + 1000, 1, Uint8Array.of(0xab, 0xcd));
    recorder.mark(at.start + 1500, 'release', { stick: 'left' });
    recorder.gap(at.start + 2000, null);
    recorder.featureReply(at.start + 2500, 3, Uint8Array.of(9));
    recorder.report(at.start + 3000, 1, new Uint8Array(0));
    expect(await recorder.close()).toEqual({ ok: true, value: undefined });
    expect(await readLog(at.file)).toEqual({
      cut: false,
      entries: [
        'header Bench pad, healthy',
        'sent 10 2 01',
        'report 1000 1 abcd',
        'mark 1500 release {"stick":"left"}',
        'gap 2000 null',
        'feature 2500 3 09',
        'report 3000 1 ',
      ],
    });
  });

  it('never lets time run back, so that the log stays readable', async () => {
    const at = await session();
    const recorder = await record(at);
    recorder.report(at.start + 2000, 1, Uint8Array.of(1));
    recorder.mark(at.start + 1990.6, 'turn', {});
    recorder.report(at.start - 5, 1, Uint8Array.of(2));
    await recorder.close();
    expect((await readLog(at.file)).entries.slice(1)).toEqual([
      'report 2000 1 01',
      'mark 2000 turn {}',
      'report 2000 1 02',
    ]);
  });

  it('has its header on the disk at once and every line within a second', async () => {
    const at = await session();
    const recorder = await record(at);
    expect((await readLog(at.file)).entries).toHaveLength(1);
    reportMany(recorder, at.start, 30);
    await at.clock.passSlowly(1000);
    await recorder.flush();
    expect((await readLog(at.file)).entries).toHaveLength(31);
    reportMany(recorder, at.start + 1_000_000, 5);
    at.clock.pass(1000);
    await expect.poll(async () => (await readLog(at.file)).entries.length, { timeout: 20_000 }).toBe(36);
    await recorder.close();
    expect(at.clock.waiting).toBe(0);
  });

  it('goes on writing after there was nothing to write for a while', async () => {
    const at = await session();
    const recorder = await record(at);
    await recorder.flush();
    await Promise.all([recorder.flush(), recorder.flush()]);
    reportMany(recorder, at.start, 2);
    const flushing = recorder.flush();
    reportMany(recorder, at.start + 5000, 2);
    await Promise.all([flushing, recorder.flush()]);
    expect((await readLog(at.file)).entries).toHaveLength(5);
    await recorder.close();
  });

  it('takes nothing more after it was closed, and answers every close alike', async () => {
    const at = await session();
    const recorder = await record(at);
    const closing = recorder.close();
    recorder.report(at.start, 1, Uint8Array.of(1));
    expect(await closing).toEqual(await recorder.close());
    expect((await readLog(at.file)).entries).toHaveLength(1);
  });

  it('never overwrites a file', async () => {
    const at = await session();
    await writeFile(at.file, 'mine');
    const opened = await openRecorder(at.file, header, { clock: at.clock, startMicros: at.start });
    expect(opened.ok ? null : opened.problem.code).toBe('file-exists');
    expect(await readFile(at.file, 'utf8')).toBe('mine');
  });

  it('says so when the log cannot be made or its header cannot be written', async () => {
    const at = await session();
    const options = { clock: at.clock, startMicros: at.start };
    const barred = await openRecorder(at.file, header, {
      ...options,
      files: failingFiles({ at: 'create', errno: 'EACCES' }),
    });
    expect(barred.ok ? null : barred.problem.code).toBe('file-no-permission');
    const files = failingFiles({ at: 'write', errno: 'ENOSPC' });
    const full = await openRecorder(at.file, header, { ...options, files });
    expect(full.ok ? null : full.problem.code).toBe('disk-full');
    expect(files.asked).toContain('close');
    expect(existsSync(at.file)).toBe(false);
    const missing = await openRecorder(path.join(at.file, 'no', 'such', 'folder'), header, options);
    expect(missing.ok).toBe(false);
  });

  it('ends where a disk takes nothing more and does not even say so', async () => {
    const at = await session();
    const files: LogFiles = {
      ...systemFiles,
      async create(file) {
        const real = await systemFiles.create(file);
        let calls = 0;
        return { ...real, write: (bytes) => ((calls += 1) > 1 ? Promise.resolve(0) : real.write(bytes)) };
      },
    };
    const recorder = await record(at, files);
    reportMany(recorder, at.start, 3);
    const closed = await recorder.close();
    expect(closed.ok ? null : closed.problem.code).toBe('disk-full');
    expect((await readLog(at.file)).entries).toEqual(['header Bench pad, healthy']);
  });

  it.each([0, 1, 7, 20, 45, 1000])(
    'ends with its last whole line when the disk fills up %i bytes into a write, and tells it once',
    async (takes) => {
      const at = await session();
      const files = failingFiles({ at: 'write', errno: 'ENOSPC', after: 2, takes });
      const recorder = await record(at, files);
      reportMany(recorder, at.start, 10);
      await recorder.flush();
      reportMany(recorder, at.start + 10_000, 100);
      await recorder.flush();
      reportMany(recorder, at.start + 200_000, 100);
      const closed = await recorder.close();
      expect(closed.ok ? null : closed.problem.code).toBe('disk-full');
      expect(at.problems.map((problem) => problem.says)).toEqual([
        'a.padlog could not be written: the disk is full; free some space and try again.',
      ]);
      const log = await readLog(at.file);
      expect(log.cut).toBe(false);
      const lineLength = '["r",10000,1,"0000"]\n'.length;
      expect(log.entries).toHaveLength(1 + 10 + Math.floor(takes / lineLength));
      expect((await readFile(at.file)).at(-1)).toBe(0x0a);
      expect(files.asked.at(-1)).toBe('close');
    },
  );

  it('keeps the log readable even where the half line cannot be cut away', async () => {
    const at = await session();
    const files = failingFiles({ at: 'write', errno: 'EIO', after: 1, takes: 30 }, { at: 'truncate', errno: 'EIO' });
    const recorder = await record(at, files);
    reportMany(recorder, at.start, 50);
    await recorder.close();
    expect(at.problems).toHaveLength(1);
    expect(await readLog(at.file)).toEqual({ cut: true, entries: ['header Bench pad, healthy', 'report 0 1 0000'] });
  });

  it('tells when the last of the log could not be brought to the disk, and closes the file all the same', async () => {
    for (const operation of ['sync', 'close'] as const) {
      const at = await session();
      const files = failingFiles({ at: operation, errno: 'EIO' });
      const recorder = await record(at, files);
      reportMany(recorder, at.start, 3);
      const closed = await recorder.close();
      expect(closed.ok ? null : closed.problem.code).toBe('file-failed');
      expect(files.asked.at(-1)).toBe('close');
      expect((await readLog(at.file)).entries).toHaveLength(4);
    }
  });

  it('leaves a log that is readable to its last whole line when its process is killed', async () => {
    const file = path.join(await temporaryFolder(), 'killed.padlog');
    const child = spawn(process.execPath, ['tests/support/record-until-killed.ts', file], { stdio: 'inherit' });
    onTestFinished(() => void child.kill('SIGKILL'));
    const size = (): Promise<number> =>
      stat(file).then(
        ({ size }) => size,
        () => 0,
      );
    await expect.poll(size, { timeout: 20_000, interval: 50 }).toBeGreaterThan(40_000);
    child.kill('SIGKILL');
    await once(child, 'exit');
    expect(child.signalCode).toBe('SIGKILL');
    const log = await readLog(file);
    expect(log.entries[0]).toBe('header Bench pad, healthy');
    expect(log.entries.length).toBeGreaterThan(900);
  });
});
