/** Judged values as the screen writes them: shares in per cent, everything else in its unit. */
import { formatQuantity } from '../../../core/measure/format-quantity.ts';
import { NARROW, signed } from '../../../core/plot/number-text.ts';

interface Written {
  /** From the value as judged to the number that is written. */
  readonly times: number;
  /** Stands right after the number. */
  readonly sign: string;
  /** What the number is of or in, for a line of words; empty where the sign says it all. */
  readonly of: string;
}

/** Shares become per cent, degrees and times have their sign; any other unit is written as it is. */
export function writtenIn(unit: string): Written {
  if (unit.startsWith('share')) return { times: 100, sign: `${NARROW}%`, of: unit.slice('share'.length).trim() };
  if (unit === 'degrees') return { times: 1, sign: '°', of: '' };
  if (unit === 'ms') return { times: 1, sign: `${NARROW}ms`, of: '' };
  if (unit === 'times') return { times: 1, sign: '×', of: '' };
  return { times: 1, sign: '', of: unit };
}

/** E.g. `3.2 %`: the number alone, as short as its size allows. */
export function writeNumber(value: number, unit: string): string {
  const { times, sign } = writtenIn(unit);
  return `${shortNumber(value * times)}${sign}`;
}

/** E.g. `3.20 ± 0.41 % of the half travel`; a dash where it could not be measured. */
export function writeQuantity(value: number | null, u95: number | null, unit: string): string {
  if (value === null) return '—';
  const { times, sign, of } = writtenIn(unit);
  const number =
    u95 === null ? shortNumber(value * times) : formatQuantity(value * times, u95 * times, decimalsOf(value * times));
  return [`${number}${sign}`, of].filter((part) => part !== '').join(' ');
}

/** A tick of a scale: `decimals` are those of the value as judged. */
export function writeTick(value: number, decimals: number, unit: string): string {
  const { times, sign } = writtenIn(unit);
  return `${signed(value * times, Math.max(0, decimals - Math.round(Math.log10(times))))}${sign}`;
}

function shortNumber(value: number): string {
  return signed(value, decimalsOf(value));
}

function decimalsOf(value: number): number {
  const size = Math.abs(value);
  if (Math.abs(size - Math.round(size)) < 1e-9) return 0;
  return size < 1 ? 2 : size < 100 ? 1 : 0;
}
