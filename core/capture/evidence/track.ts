/** The readings of a whole log, one typed column a quantity. */
import type { PadLayout } from '../../pad/layout.ts';
import type { DamagedLines } from '../../log/damaged-lines.ts';
import type { LogHeader } from '../../log/header.ts';
import type { Mark } from '../../log/visitor.ts';
import type { StickFields, StickId } from '../../pad/stick.ts';
import type { Problem } from '../../result.ts';

/** The readings of one stick: raw counts as reported; `t` in microseconds, never decreasing. */
export interface StickTrack {
  readonly fields: StickFields;
  readonly t: Float64Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** 1 while any button of the pad is down. */
  readonly buttonDown: Uint8Array;
}

/** One control that is on or off; the first entry is its state when first told, every further one a change. */
export interface SwitchTrack {
  /** Usage on page 9. */
  readonly usage: number;
  readonly t: Float64Array;
  /** 1 is pressed. */
  readonly down: Uint8Array;
}

/** A value that is kept where it changed; the first entry is its state when first told. */
export interface ValueTrack {
  readonly t: Float64Array;
  readonly value: Float64Array;
}

/** Buttons, hat and triggers over a log. */
export interface InputTrack {
  readonly buttons: readonly SwitchTrack[];
  /** Degrees clockwise from up (HID's habit), NaN where nothing is pressed; null where the pad has no hat. */
  readonly hat: ValueTrack | null;
  /** Raw counts. */
  readonly triggers: Readonly<Partial<Record<StickId, ValueTrack>>>;
}

/** Everything a log holds that measures need. */
export interface Track {
  readonly header: LogHeader;
  readonly layout: PadLayout;
  readonly sticks: Readonly<Partial<Record<StickId, StickTrack>>>;
  /** Arrival of every report of the log, readings or not. */
  readonly reportTimes: Float64Array;
  /** Reports equal to the one before it, byte for byte. */
  readonly duplicates: number;
  /** Reports and marks equal to the one before and of the same microsecond: lines that stand twice, which were left out. */
  readonly repeated?: number;
  readonly inputs?: InputTrack;
  readonly marks: readonly Mark[];
  readonly gaps: readonly { readonly t: number; readonly lost: number | null }[];
  /** Lines that no version writes and that were left out, and the first of them, counted from 1. */
  readonly damaged?: DamagedLines;
  /** Reports that should carry a reading and could not be decoded, and why the first could not. */
  readonly unread?: { readonly reports: number; readonly first: Problem | null };
}

export type Purpose = 'rest' | 'rim' | 'travel' | 'flick' | 'inputs' | 'disturbance';

/** A span of a track taken for one purpose; indices into the stick's columns, end exclusive. */
export interface Capture {
  readonly purpose: Purpose;
  readonly stick: StickId | null;
  readonly from: number;
  readonly to: number;
  readonly startUs: number;
  readonly endUs: number;
}
