/** What a guide of a capture needs and tells, whatever it is a capture of. */
import type { StickFields, StickId } from '../../pad/stick.ts';

/** Writes a mark into the log, at a time of the log in microseconds. */
export type WriteMark = (t: number, name: string, detail: Readonly<Record<string, unknown>>) => void;

export interface GuideOptions {
  readonly stick: StickId;
  readonly fields: StickFields;
  /** When the capture begins, in the log's microseconds. */
  readonly startUs: number;
  readonly mark: WriteMark;
}
