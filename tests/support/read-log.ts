/** A report log read back whole, each entry as one line of words. */
import { readFile } from 'node:fs/promises';
import { LogReader } from '../../core/log/reader.ts';

export interface ReadLog {
  readonly entries: readonly string[];
  /** The log ended amid a line. */
  readonly cut: boolean;
}

/** Fails the test where the log cannot be read. */
export async function readLog(file: string): Promise<ReadLog> {
  const entries: string[] = [];
  const hex = (bytes: Uint8Array): string => Buffer.from(bytes).toString('hex');
  const reader = new LogReader({
    header: (header) => entries.push(`header ${header.pad.product}`),
    report: (t, reportId, bytes) => entries.push(`report ${t} ${reportId} ${hex(bytes)}`),
    sent: (t, reportId, bytes) => entries.push(`sent ${t} ${reportId} ${hex(bytes)}`),
    featureReply: (t, reportId, bytes) => entries.push(`feature ${t} ${reportId} ${hex(bytes)}`),
    gap: (t, lost) => entries.push(`gap ${t} ${lost}`),
    mark: ({ t, name, detail }) => entries.push(`mark ${t} ${name} ${JSON.stringify(detail)}`),
  });
  const pushed = reader.push(await readFile(file));
  const ended = reader.end();
  if (!pushed.ok) throw new Error(pushed.problem.says);
  if (!ended.ok) throw new Error(ended.problem.says);
  return { entries, cut: ended.value.cut };
}
