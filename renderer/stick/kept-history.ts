/** A history of nudges as text, so that "yours" outlives a reload of the page. */
import { z } from 'zod';
import { checkMapping } from '../../core/mapping/check-mapping.ts';
import { MAPPING_NUMBERS, numberOf } from '../../core/mapping/mapping-number.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { historyFromRows, historyRows, NO_HISTORY, type NudgeHistory } from '../../core/mapping/nudge-history.ts';
import { takenSchema, type OwnMapping, type Taken } from './origin.ts';

const numbers = z.tuple([z.number(), z.number(), z.number(), z.number(), z.number(), z.number()]);
const keptSchema = z.object({
  at: z.number().int().min(0),
  rows: z.array(numbers.nullable()),
  /** From which row on the numbers are from where; before the first they are the survey's own. */
  taken: z.array(z.object({ from: z.number().int().min(0), source: takenSchema.nullable() })).default([]),
});

type Kept = z.infer<typeof keptSchema>;

/** No history where the text is missing or is none. */
export function historyOf(text: string | null): NudgeHistory<OwnMapping> {
  const read = text === null ? null : keptSchema.safeParse(parsed(text));
  if (read?.success !== true) return NO_HISTORY;
  const { rows, at, taken } = read.data;
  const sourceAt = (row: number): Taken | null => taken.findLast(({ from }) => from <= row)?.source ?? null;
  const mappings = rows.map((row, index) => (row === null ? null : { ...mappingOf(row), taken: sourceAt(index) }));
  if (mappings.some((mapping) => mapping !== null && checkMapping(mapping) !== null)) return NO_HISTORY;
  return historyFromRows(mappings, at);
}

/** The whole history, or its newest `steps` alone. */
export function historyText(history: NudgeHistory<OwnMapping>, steps = Infinity): string {
  const { rows, at } = historyRows(history);
  const from = Math.max(0, at - steps);
  return JSON.stringify(packed(from === 0 ? rows : rows.slice(from, at + 1), at - from));
}

function packed(rows: readonly (OwnMapping | null)[], at: number): Kept {
  const taken: Kept['taken'] = [];
  for (const [from, row] of rows.entries()) {
    const source = row?.taken ?? null;
    if (JSON.stringify(source) !== JSON.stringify(taken.at(-1)?.source ?? null)) taken.push({ from, source });
  }
  return { at, rows: rows.map((row) => (row === null ? null : numbersOf(row))), taken };
}

function numbersOf(mapping: StickMapping): z.infer<typeof numbers> {
  return MAPPING_NUMBERS.map((of) => numberOf(mapping, of)) as unknown as z.infer<typeof numbers>;
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
