/** Reads a report log from its file: its header at first, then its reports and gaps piece by piece. */
import { createReadStream } from 'node:fs';
import type { DamagedLines } from '../../core/log/damaged-lines.ts';
import type { LogHeader } from '../../core/log/header.ts';
import { LogReader } from '../../core/log/reader.ts';
import type { LogVisitor } from '../../core/log/visitor.ts';
import { done, failed, type Problem, type Result } from '../../core/result.ts';
import { storageProblem } from './storage-problem.ts';

/** A report, or a gap: then without bytes. */
export interface LogEntry {
  readonly t: number;
  readonly reportId: number;
  readonly payload: Uint8Array | null;
  readonly lost: number | null;
}

/** The next entries in order, then how the log ended. */
export type LogPiece =
  | { readonly kind: 'entries'; readonly entries: readonly LogEntry[] }
  | { readonly kind: 'end'; readonly cut: boolean; readonly damaged: DamagedLines }
  | { readonly kind: 'problem'; readonly problem: Problem };

const PIECE_BYTES = 1 << 16;

/** The header alone; the rest of the file is not read. */
export async function readLogHeader(file: string): Promise<Result<LogHeader>> {
  const headers: LogHeader[] = [];
  const reader = new LogReader({ ...deaf, header: (header) => headers.push(header) });
  try {
    for await (const piece of createReadStream(file, { highWaterMark: PIECE_BYTES })) {
      const pushed = reader.push(piece as Uint8Array);
      // A fault further on is told when the reading comes to it.
      if (!pushed.ok && headers.length === 0) return pushed;
      if (headers.length > 0) break;
    }
  } catch (thrown) {
    return { ok: false, problem: storageProblem(thrown, 'read', file) };
  }
  const header = headers[0];
  if (header !== undefined) return done(header);
  const ended = reader.end();
  return ended.ok ? failed('log-empty', 'The file is empty; give a report log.') : ended;
}

/** Every report and gap of a log, at most one piece of the file in memory at a time. */
export async function* readLogPieces(file: string): AsyncGenerator<LogPiece, void> {
  let entries: LogEntry[] = [];
  let damaged: DamagedLines = { lines: 0, first: null };
  const reader = new LogReader({
    ...deaf,
    damaged: (line) => (damaged = { lines: damaged.lines + 1, first: damaged.first ?? line }),
    report: (t, reportId, bytes) => entries.push({ t, reportId, payload: bytes.slice(), lost: null }),
    gap: (t, lost) => entries.push({ t, reportId: 0, payload: null, lost }),
  });
  try {
    for await (const piece of createReadStream(file, { highWaterMark: PIECE_BYTES })) {
      const pushed = reader.push(piece as Uint8Array);
      yield { kind: 'entries', entries };
      entries = [];
      if (!pushed.ok) {
        yield { kind: 'problem', problem: pushed.problem };
        return;
      }
    }
  } catch (thrown) {
    yield { kind: 'problem', problem: storageProblem(thrown, 'read', file) };
    return;
  }
  const ended = reader.end();
  yield { kind: 'entries', entries };
  yield ended.ok ? { kind: 'end', cut: ended.value.cut, damaged } : { kind: 'problem', problem: ended.problem };
}

const deaf: LogVisitor = {
  header: () => undefined,
  report: () => undefined,
  gap: () => undefined,
  mark: () => undefined,
};
