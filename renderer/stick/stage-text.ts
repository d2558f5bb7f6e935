/** Fields of a stage as text and back. */
import type { Stage } from '../../core/zones/chain.ts';
import type { StageField } from './stage-kinds.ts';

/** What stands in the field, e.g. `10` for 0.1 as per cent. */
export function fieldText(stage: Stage, { key, kind }: StageField): string {
  const value = valueAt(stage, key);
  if (kind === 'percent') return percent(value);
  if (kind === 'points') return (value as number[][]).map((pair) => pair.map(percent).join(' ')).join('\n');
  if (kind === 'sectors')
    return (value as { inner: number; outer: number }[])
      .map(({ inner, outer }) => `${percent(inner)} ${percent(outer)}`)
      .join('\n');
  if (typeof value === 'boolean' || typeof value === 'number' || typeof value === 'string') return String(value);
  return key[0] === 'rescale' ? 'false' : '';
}

/** The stage with what a hand wrote in a field; what is no number becomes NaN, which the chain's own reader refuses by name. */
export function withField(stage: Stage, { key, kind }: StageField, text: string): unknown {
  return put(stage, key, read(kind, key, text));
}

function read(kind: StageField['kind'], key: readonly string[], text: string): unknown {
  if (kind === 'percent') return fraction(text);
  if (kind === 'number') return number(text);
  if (kind === 'points') return rows(text);
  if (kind === 'sectors') return rows(text).map(([inner, outer]) => ({ inner, outer }));
  if (text === 'true' || text === 'false') return text === 'true';
  return key.at(-1) === 'ways' ? Number(text) : text;
}

function rows(text: string): number[][] {
  return text
    .split(/\n/u)
    .map((row) => row.trim())
    .filter((row) => row !== '')
    .map((row) => row.split(/[\s;]+/u).map(fraction));
}

function fraction(text: string): number {
  const value = number(text.replace(/%\s*$/u, ''));
  return Math.round(value * 1e8) / 1e10;
}

/** A comma is a decimal point in many a country. */
function number(text: string): number {
  const trimmed = text.trim().replace(',', '.');
  return trimmed === '' ? Number.NaN : Number(trimmed);
}

function percent(value: unknown): string {
  return typeof value === 'number' ? String(Math.round(value * 1e8) / 1e6) : '';
}

function valueAt(stage: unknown, key: readonly string[]): unknown {
  return key.reduce<unknown>(
    (value, part) =>
      typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[part] : undefined,
    stage,
  );
}

function put(whole: unknown, [first, ...rest]: readonly string[], value: unknown): unknown {
  if (first === undefined) return value;
  const object = typeof whole === 'object' && whole !== null ? (whole as Record<string, unknown>) : {};
  return { ...object, [first]: put(object[first], rest, value) };
}
