/** What the entries of a report log are handed to, one at a time, in order; nothing is kept by the reader. */

import type { LogHeader } from './header.ts';

/** A mark as written; readers skip names that they do not know. */
export interface Mark {
  readonly t: number;
  readonly name: string;
  readonly detail: Readonly<Record<string, unknown>>;
}

export interface LogVisitor {
  /** Called once, before anything else. */
  header(header: LogHeader): void;
  /** An input report; `bytes` is lent for the call only. Times are whole microseconds from the start. */
  report(t: number, reportId: number, bytes: Uint8Array): void;
  sent?(t: number, reportId: number, bytes: Uint8Array): void;
  featureReply?(t: number, reportId: number, bytes: Uint8Array): void;
  /** `lost` is null when how many is not known. */
  gap(t: number, lost: number | null): void;
  mark(mark: Mark): void;
  /** A line, counted from 1, that no version writes: it was left out. */
  damaged?(line: number): void;
}
