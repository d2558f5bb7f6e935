/** What a hand did to one mapping, step by step, as data: undone and redone without limit. A step may carry more than its mapping. */
import type { StickMapping } from './mapping.ts';
import { sameMapping } from './mapping-number.ts';

interface Step<M extends StickMapping> {
  /** Null before the first nudge: there was no mapping of one's own yet. */
  readonly mapping: M | null;
  readonly next: Step<M> | null;
}

/** Steps are chained, newest first, so that a nudge costs the same after ten thousand others. */
export interface NudgeHistory<M extends StickMapping = StickMapping> {
  readonly present: M | null;
  readonly past: Step<M> | null;
  readonly future: Step<M> | null;
  /** The gesture that made the present, or null once it has ended. */
  readonly gesture: string | null;
}

export const NO_HISTORY: NudgeHistory<never> = { present: null, past: null, future: null, gesture: null };

/**
 * Takes a mapping as the newest step; what was undone before it is forgotten. Steps of one gesture, a drag say, are one
 * step. An equal mapping is no step.
 */
export function takeStep<M extends StickMapping>(
  history: NudgeHistory<M>,
  mapping: M | null,
  gesture: string | null = null,
): NudgeHistory<M> {
  if (isSame(history.present, mapping)) return history;
  const goesOn = gesture !== null && gesture === history.gesture;
  const past = goesOn ? history.past : { mapping: history.present, next: history.past };
  return { present: mapping, past, future: null, gesture };
}

export function undo<M extends StickMapping>(history: NudgeHistory<M>): NudgeHistory<M> {
  const { past, present, future } = history;
  if (past === null) return history;
  return { present: past.mapping, past: past.next, future: { mapping: present, next: future }, gesture: null };
}

export function redo<M extends StickMapping>(history: NudgeHistory<M>): NudgeHistory<M> {
  const { past, present, future } = history;
  if (future === null) return history;
  return { present: future.mapping, past: { mapping: present, next: past }, future: future.next, gesture: null };
}

/** The history in rows that JSON can keep, oldest first, and which of them is the present. */
export function historyRows<M extends StickMapping>(history: NudgeHistory<M>): { rows: (M | null)[]; at: number } {
  const before = unchained(history.past).reverse();
  return { rows: [...before, history.present, ...unchained(history.future)], at: before.length };
}

/** The inverse of `historyRows`; no history where `at` names no row. */
export function historyFromRows<M extends StickMapping>(rows: readonly (M | null)[], at: number): NudgeHistory<M> {
  const present = rows[at];
  if (present === undefined) return NO_HISTORY;
  let past: Step<M> | null = null;
  for (const mapping of rows.slice(0, at)) past = { mapping, next: past };
  let future: Step<M> | null = null;
  for (const mapping of rows.slice(at + 1).toReversed()) future = { mapping, next: future };
  return { present, past, future, gesture: null };
}

function unchained<M extends StickMapping>(first: Step<M> | null): (M | null)[] {
  const list: (M | null)[] = [];
  for (let step = first; step !== null; step = step.next) list.push(step.mapping);
  return list;
}

function isSame(one: StickMapping | null, other: StickMapping | null): boolean {
  return one === null || other === null ? one === other : sameMapping(one, other);
}
