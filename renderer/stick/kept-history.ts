/** A history of nudges as text, so that "yours" outlives a change of view and a reload of the page. */
import { z } from 'zod';
import { checkMapping } from '../../core/mapping/check-mapping.ts';
import { MAPPING_NUMBERS, numberOf } from '../../core/mapping/mapping-number.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { historyFromRows, historyRows, NO_HISTORY, type NudgeHistory } from '../../core/mapping/nudge-history.ts';

/** The part of the window's session storage that is used. */
export interface HistoryStore {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}

const numbers = z.tuple([z.number(), z.number(), z.number(), z.number(), z.number(), z.number()]);
const keptSchema = z.object({ at: z.number().int().min(0), rows: z.array(numbers.nullable()) });

/** Rows that are kept where the store has no room for all. */
const FEWER = 500;

export function readHistory(store: HistoryStore, key: string): NudgeHistory {
  const text = store.getItem(key);
  if (text === null) return NO_HISTORY;
  const read = keptSchema.safeParse(parsed(text));
  if (!read.success) return NO_HISTORY;
  const rows = read.data.rows.map((row) => (row === null ? null : mappingOf(row)));
  if (rows.some((mapping) => mapping !== null && checkMapping(mapping) !== null)) return NO_HISTORY;
  return historyFromRows(rows, read.data.at);
}

/** The newest steps alone where the store is too small for all; false where even they find no room. */
export function writeHistory(store: HistoryStore, key: string, history: NudgeHistory): boolean {
  const { rows, at } = historyRows(history);
  const from = Math.max(0, at - FEWER);
  return (
    write(store, key, { at, rows: rows.map(packed) }) ||
    write(store, key, { at: at - from, rows: rows.slice(from, at + 1).map(packed) })
  );
}

function write(store: HistoryStore, key: string, kept: z.infer<typeof keptSchema>): boolean {
  try {
    store.setItem(key, JSON.stringify(kept));
    return true;
  } catch (refusal) {
    // The store's quota is the only refusal that is known here.
    if (refusal instanceof DOMException) return false;
    throw refusal;
  }
}

function packed(mapping: StickMapping | null): z.infer<typeof numbers> | null {
  return mapping === null
    ? null
    : (MAPPING_NUMBERS.map((of) => numberOf(mapping, of)) as unknown as z.infer<typeof numbers>);
}

function mappingOf([xMin, xCentre, xMax, yMin, yCentre, yMax]: z.infer<typeof numbers>): StickMapping {
  return { x: { min: xMin, centre: xCentre, max: xMax }, y: { min: yMin, centre: yCentre, max: yMax } };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
