/** Numbers as figures and ledgers write them: a true minus, a narrow space that does not break before the per cent sign. */
import { signed } from '../numeric/signed-text.ts';

export { signed };

export const NARROW = '\u202f';

/** A fraction as per cent: 0.0583 → `5.8 %`. */
export function percent(fraction: number, decimals = 1): string {
  return `${signed(fraction * 100, decimals)}${NARROW}%`;
}

/** A raw count: whole where it is whole, else one decimal. */
export function count(value: number): string {
  return signed(value, Number.isInteger(value) ? 0 : 1);
}
