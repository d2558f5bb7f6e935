/**
 * What a memory session asks of the world, one thing at a time, and what the world answers. The session itself is pure: a
 * generator that yields effects and is resumed with events, without a clock, a pad or a disk.
 */
import type { Problem } from '../result.ts';

/** A line of the journal that is on the disk before the step that it names is taken. */
export type JournalStep =
  | { readonly step: 'begin' }
  | { readonly step: 'write' | 'rollBack'; readonly offset: number; readonly bytes: number }
  | { readonly step: 'end'; readonly end: 'before' | 'after' };

export type SessionEffect =
  /** Answered with `reply`, or with `timeout` after so long; `unsent` where it could not be sent. */
  | {
      readonly do: 'send';
      readonly reportId: number;
      readonly payload: Uint8Array;
      readonly timeoutMillis: number;
    }
  /** Answered with `waited`. */
  | { readonly do: 'wait'; readonly millis: number }
  /** An accepted image, kept on the disk; answered with `kept`. */
  | { readonly do: 'keep'; readonly image: Uint8Array; readonly why: string; readonly map: string }
  /** Answered with `kept`. */
  | { readonly do: 'journal'; readonly entry: JournalStep };

export type SessionEvent =
  | { readonly is: 'reply'; readonly payload: Uint8Array }
  | { readonly is: 'timeout' | 'waited' | 'kept' }
  | { readonly is: 'unsent'; readonly problem: Problem }
  /** The disk took nothing. */
  | { readonly is: 'unkept'; readonly problem: Problem }
  /** In place of what was asked for, which is then not done: a reply came that nobody waited for. */
  | { readonly is: 'stray'; readonly payload: Uint8Array }
  /** In place of what was asked for: the pad has left. */
  | { readonly is: 'lost'; readonly problem: Problem }
  /** In place of what was asked for, once: the technician ends the session. */
  | { readonly is: 'abort' };

/** A stretch of a session: yields effects, is resumed with events, ends with its value. */
export type Steps<T> = Generator<SessionEffect, T, SessionEvent>;

/** Where a session stands; written by the session, read by whoever drives it. */
export interface SessionTally {
  step: 'identify' | 'read' | 'keep' | 'journal' | 'write' | 'compare' | 'rollBack' | 'over';
  /** Commands answered, and all that are to be sent, this far known. */
  done: number;
  of: number;
  /** Commands that were sent once more. */
  retries: number;
  /** Replies that came after their time. */
  late: number;
  /** A write was begun and its end is not known yet. */
  writing: boolean;
}

export function newTally(): SessionTally {
  return { step: 'identify', done: 0, of: 0, retries: 0, late: 0, writing: false };
}
