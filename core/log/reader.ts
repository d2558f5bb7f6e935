/** Reads a report log from chunks of bytes and hands each entry to a visitor; holds no more than one line. */
import { done, failed, type Problem, type Result } from '../result.ts';
import { parseEntry, type Entry } from './entry.ts';
import { parseHeader } from './parse-header.ts';
import { parseJson } from './parse-json.ts';
import { ReportLine } from './report-line.ts';
import { decodeUtf8 } from './utf8.ts';
import type { LogVisitor } from './visitor.ts';

const NEWLINE = 0x0a;
const RETURN = 0x0d;
const BRACE = 0x7b;
const BYTE_ORDER_MARK: readonly number[] = [0xef, 0xbb, 0xbf];
/** No line of a report log comes near: what has none for so long is another kind of file. */
const LONGEST_LINE = 1 << 20;

/**
 * Lines are counted from 1, the header's. A log cut off anywhere is read to its last whole line. After the first
 * problem every further call answers with it again.
 */
export class LogReader {
  readonly #visitor: LogVisitor;
  readonly #report = new ReportLine();
  /** The beginning of a line that the last chunk cut. */
  #rest = new Uint8Array(4096);
  #restLength = 0;
  #lines = 0;
  #bytes = 0;
  #last = 0;
  #hasHeader = false;
  #problem: Problem | null = null;

  constructor(visitor: LogVisitor) {
    this.#visitor = visitor;
  }

  /** Takes the next bytes of the file, however they are cut. */
  push(chunk: Uint8Array): Result<void> {
    this.#bytes += chunk.length;
    let from = 0;
    while (this.#problem === null) {
      const end = chunk.indexOf(NEWLINE, from);
      if (end < 0) break;
      if (this.#restLength === 0) this.#line(chunk, from, end);
      else if (this.#keep(chunk, from, end)) this.#keptLine();
      from = end + 1;
    }
    if (this.#problem === null) this.#keep(chunk, from, chunk.length);
    return this.#problem === null ? done(undefined) : { ok: false, problem: this.#problem };
  }

  /** After the last chunk. `cut` says that the log ends inside a line, which was left out. */
  end(): Result<{ readonly lines: number; readonly cut: boolean }> {
    // No beginning of a line is JSON, so that a last line without its newline counts where it can be read.
    const cut =
      this.#problem === null &&
      this.#restLength > 0 &&
      !parseJson(decodeUtf8(withoutMark(this.#rest.subarray(0, this.#restLength)))).ok;
    if (this.#restLength > 0 && !cut && this.#problem === null) this.#keptLine();
    if (this.#problem !== null) return { ok: false, problem: this.#problem };
    if (this.#hasHeader) return done({ lines: this.#lines, cut });
    if (this.#bytes === 0) return failed('log-empty', 'The file is empty; give a report log.');
    return failed('log-cut-in-header', 'The report log ends inside its first line; nothing in it can be read.', 1);
  }

  #keptLine(): void {
    const length = this.#restLength;
    this.#restLength = 0;
    this.#line(this.#rest, 0, length);
  }

  /** Keeps what a chunk cut; false where it cannot be part of a report log. */
  #keep(chunk: Uint8Array, from: number, to: number): boolean {
    const length = this.#restLength + to - from;
    if (length > LONGEST_LINE) {
      this.#refuse('log-not-a-log', `Line ${this.#lines + 1} has no end; this is not a report log.`);
      return false;
    }
    if (length > this.#rest.length) {
      const larger = new Uint8Array(length * 2);
      larger.set(this.#rest);
      this.#rest = larger;
    }
    this.#rest.set(from === 0 && to === chunk.length ? chunk : chunk.subarray(from, to), this.#restLength);
    this.#restLength = length;
    // A file of another kind is told before its first newline, which may never come.
    const first = this.#rest[0];
    if (this.#lines > 0 || length === 0 || first === BRACE || first === BYTE_ORDER_MARK[0]) return true;
    this.#refuse('log-not-a-log', 'This is not a report log; give a .padlog file.');
    return false;
  }

  #line(bytes: Uint8Array, from: number, end: number): void {
    this.#lines += 1;
    const to = end > from && bytes[end - 1] === RETURN ? end - 1 : end;
    if (!this.#hasHeader) this.#header(bytes.subarray(from, to));
    else if (this.#report.read(bytes, from, to)) {
      if (this.#inOrder(this.#report.t))
        this.#visitor.report(this.#report.t, this.#report.reportId, this.#report.bytes);
    } else if (to > from) this.#entry(decodeUtf8(bytes.subarray(from, to)));
  }

  #header(bytes: Uint8Array): void {
    const header = parseHeader(decodeUtf8(withoutMark(bytes)));
    if (!header.ok) {
      this.#problem = header.problem;
      return;
    }
    this.#hasHeader = true;
    this.#visitor.header(header.value);
  }

  #entry(text: string): void {
    const entry = parseEntry(text, this.#lines);
    if (!entry.ok) this.#problem = entry.problem;
    else if (entry.value === 'damaged') this.#damaged(text);
    else if (entry.value !== 'later' && this.#inOrder(entry.value.t)) this.#hand(entry.value);
  }

  /** What follows the header of another log is of another pad or time, whatever the first header says. */
  #damaged(text: string): void {
    if (parseHeader(text).ok)
      this.#refuse(
        'log-joined',
        `Line ${this.#lines} of the report log is the header of another log: the file was joined from two; give each of them by itself.`,
      );
    else this.#visitor.damaged?.(this.#lines);
  }

  #hand(entry: Entry): void {
    const { t } = entry;
    if (entry.letter === 'g') this.#visitor.gap(t, entry.lost);
    else if (entry.letter === 'm') this.#visitor.mark({ t, name: entry.name, detail: entry.detail });
    else if (entry.letter === 'r') this.#visitor.report(t, entry.reportId, entry.bytes);
    else if (entry.letter === 'o') this.#visitor.sent?.(t, entry.reportId, entry.bytes);
    else this.#visitor.featureReply?.(t, entry.reportId, entry.bytes);
  }

  #inOrder(t: number): boolean {
    if (t >= this.#last) {
      this.#last = t;
      return true;
    }
    const says = `Line ${this.#lines} of the report log goes back in time, from ${this.#last} µs to ${t} µs; the file was changed or joined from two.`;
    this.#refuse('log-time', says);
    return false;
  }

  #refuse(code: string, says: string): void {
    this.#problem = { code, says, at: Math.max(1, this.#lines) };
  }
}

/** Some editors put a byte order mark before the first line. */
function withoutMark(bytes: Uint8Array): Uint8Array {
  return BYTE_ORDER_MARK.every((byte, i) => bytes[i] === byte) ? bytes.subarray(BYTE_ORDER_MARK.length) : bytes;
}
