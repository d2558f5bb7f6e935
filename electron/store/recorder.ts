/** Appends everything of a session to its report log. Nothing is dropped, nothing throws, whatever the disk does. */
import { formatFeature, formatGap, formatHeader, formatMark, formatReport, formatSent } from '../../core/log/format.ts';
import type { LogHeader } from '../../core/log/header.ts';
import { done, type Problem, type Result } from '../../core/result.ts';
import type { Clock } from '../bench/time/clock.ts';
import { systemFiles, type LogFile, type LogFiles } from './log-files.ts';
import { storageProblem } from './storage-problem.ts';
import { systemError } from './whole-file.ts';

/** Lines wait this long at most; what a killed program loses is shorter than a second. */
const FLUSH_MILLIS = 500;
const FLUSH_CHARACTERS = 1 << 18;
const NEWLINE = 0x0a;

export interface RecorderOptions {
  readonly clock: Clock;
  /** The clock's micros that the log counts as 0. */
  readonly startMicros: number;
  /** Called once, with the first problem; the log then ends with its last whole line. */
  readonly onProblem?: (problem: Problem) => void;
  readonly files?: LogFiles;
}

/** Makes a new log with its header already on the disk. An existing file is refused, never overwritten. */
export async function openRecorder(
  file: string,
  header: LogHeader,
  options: RecorderOptions,
): Promise<Result<Recorder>> {
  const files = options.files ?? systemFiles;
  let opened: LogFile;
  try {
    opened = await files.create(file);
  } catch (thrown) {
    return { ok: false, problem: storageProblem(thrown, 'write', file) };
  }
  const recorder = new Recorder(file, opened, header, options);
  await recorder.flush();
  if (recorder.problem === null) return done(recorder);
  await recorder.close();
  // A log without its header is of no use to anybody.
  await files.remove(file).catch(() => undefined);
  return { ok: false, problem: recorder.problem };
}

/** Times are the clock's whole micros; the log holds them from its start, and never lets them run back. */
export class Recorder {
  readonly #file: string;
  readonly #opened: LogFile;
  readonly #options: RecorderOptions;
  #waiting: string;
  #lastMicros = 0;
  #writtenBytes = 0;
  #writing: Promise<void> | null = null;
  #closing: Promise<Result<void>> | null = null;
  #cancelFlush: (() => void) | null = null;
  #problem: Problem | null = null;

  constructor(file: string, opened: LogFile, header: LogHeader, options: RecorderOptions) {
    this.#file = file;
    this.#opened = opened;
    this.#options = options;
    this.#waiting = formatHeader(header);
  }

  /** What ended the recording, or null. */
  get problem(): Problem | null {
    return this.#problem;
  }

  report(atMicros: number, reportId: number, payload: Uint8Array): void {
    this.#append(formatReport(this.#time(atMicros), reportId, payload));
  }

  sent(atMicros: number, reportId: number, payload: Uint8Array): void {
    this.#append(formatSent(this.#time(atMicros), reportId, payload));
  }

  featureReply(atMicros: number, reportId: number, payload: Uint8Array): void {
    this.#append(formatFeature(this.#time(atMicros), reportId, payload));
  }

  gap(atMicros: number, lost: number | null): void {
    this.#append(formatGap(this.#time(atMicros), lost));
  }

  mark(atMicros: number, name: string, detail: Readonly<Record<string, unknown>>): void {
    this.#append(formatMark(this.#time(atMicros), name, detail));
  }

  /** Everything so far handed to the system: it outlives this program, though not a loss of power. */
  async flush(): Promise<void> {
    this.#cancelFlush?.();
    this.#cancelFlush = null;
    while (this.#writing !== null || (this.#waiting !== '' && this.#problem === null)) {
      this.#writing ??= this.#writeOut().finally(() => (this.#writing = null));
      await this.#writing;
    }
  }

  /** The rest written, down to the disk, and the file closed. Every call answers with how the recording ended. */
  close(): Promise<Result<void>> {
    this.#closing ??= this.#end();
    return this.#closing;
  }

  #time(atMicros: number): number {
    this.#lastMicros = Math.max(this.#lastMicros, Math.round(atMicros - this.#options.startMicros));
    return this.#lastMicros;
  }

  #append(line: string): void {
    if (this.#problem !== null || this.#closing !== null) return;
    this.#waiting += line;
    if (this.#waiting.length >= FLUSH_CHARACTERS) void this.flush();
    else this.#cancelFlush ??= this.#options.clock.after(FLUSH_MILLIS, () => void this.flush());
  }

  async #writeOut(): Promise<void> {
    while (this.#waiting !== '' && this.#problem === null) {
      const lines = Buffer.from(this.#waiting);
      this.#waiting = '';
      await this.#writeLines(lines);
    }
  }

  async #writeLines(lines: Uint8Array): Promise<void> {
    let taken = 0;
    try {
      while (taken < lines.length) {
        const more = await this.#opened.write(lines.subarray(taken));
        if (more === 0) throw systemError('ENOSPC', 'the disk took no more');
        taken += more;
      }
      this.#writtenBytes += taken;
    } catch (thrown) {
      this.#fail(thrown);
      await this.#cutToLastLine(lines.subarray(0, taken));
    }
  }

  /** After a failure amid a write: what stands in the file ends with a whole line. */
  async #cutToLastLine(taken: Uint8Array): Promise<void> {
    try {
      await this.#opened.truncate(this.#writtenBytes + taken.lastIndexOf(NEWLINE) + 1);
    } catch (thrown) {
      // The first problem has been told, and every reader of a log leaves half a line out by itself.
      this.#fail(thrown);
    }
  }

  async #end(): Promise<Result<void>> {
    await this.flush();
    for (const last of [() => this.#opened.sync(), () => this.#opened.close()]) {
      try {
        await last();
      } catch (thrown) {
        this.#fail(thrown);
      }
    }
    return this.#problem === null ? done(undefined) : { ok: false, problem: this.#problem };
  }

  #fail(thrown: unknown): void {
    if (this.#problem !== null) return;
    this.#problem = storageProblem(thrown, 'write', this.#file);
    this.#waiting = '';
    this.#options.onProblem?.(this.#problem);
  }
}
