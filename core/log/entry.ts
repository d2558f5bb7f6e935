/** One entry line of a report log read through JSON: whatever the fast path for reports leaves. */
import { readHex } from '../hid/hex.ts';
import { done, failed, type Result } from '../result.ts';
import { parseJson } from './parse-json.ts';

export type Entry =
  | {
      readonly letter: 'r' | 'o' | 'f';
      readonly t: number;
      readonly reportId: number;
      readonly bytes: Uint8Array;
    }
  | { readonly letter: 'g'; readonly t: number; readonly lost: number | null }
  | {
      readonly letter: 'm';
      readonly t: number;
      readonly name: string;
      readonly detail: Readonly<Record<string, unknown>>;
    };

/**
 * `later` is an entry of a kind that later versions may write: kept in the file and skipped. `damaged` is a line that no version
 * writes, JSON or not. Problems carry the line, counted from 1.
 */
export function parseEntry(text: string, line: number): Result<Entry | 'later' | 'damaged'> {
  const read = parseJson(text);
  if (!read.ok || !Array.isArray(read.value)) return done('damaged');
  const [letter, t, third, fourth] = read.value as readonly unknown[];
  if (typeof letter !== 'string') return done('damaged');
  if (!KNOWN.has(letter)) return done(LATER.has(letter) ? 'later' : 'damaged');
  if (!isWhole(t, Number.MAX_SAFE_INTEGER)) return refuse(`its time ${say(t)} is not whole microseconds.`, line);
  if (letter === 'g') {
    const lost = third ?? null;
    if (lost !== null && !isWhole(lost, Number.MAX_SAFE_INTEGER))
      return refuse(`its number of lost reports ${say(lost)} is not a whole number.`, line);
    return done({ letter, t, lost });
  }
  if (letter === 'm') {
    if (typeof third !== 'string') return refuse('its mark has no name.', line);
    if (fourth !== undefined && !isRecord(fourth)) return refuse(`its mark "${third}" has no object.`, line);
    return done({ letter, t, name: third, detail: fourth ?? {} });
  }
  if (!isWhole(third, 255)) return refuse(`its report id ${say(third)} is not 0 to 255.`, line);
  if (typeof fourth !== 'string') return refuse('its report has no hex text.', line);
  const bytes = readHex(fourth);
  if (!bytes.ok) return refuse(`its report cannot be read. ${bytes.problem.says}`, line);
  return done({ letter: letter as 'r' | 'o' | 'f', t, reportId: third, bytes: bytes.value });
}

const KNOWN: ReadonlySet<string> = new Set(['r', 'o', 'f', 'g', 'm']);
/** Kept for later versions: no single bit that flips makes one of them out of a known letter. */
const LATER: ReadonlySet<string> = new Set(['a', 'h', 'j', 'q', 't', 'u', 'x', 'y']);

function refuse(why: string, line: number): ReturnType<typeof failed> {
  return failed('log-line', `Line ${line} of the report log cannot be read: ${why}`, line);
}

function isWhole(value: unknown, greatest: number): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0 && (value as number) <= greatest;
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function say(value: unknown): string {
  return value === undefined ? '(missing)' : JSON.stringify(value);
}
