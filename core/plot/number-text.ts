/** Numbers as figures and ledgers write them: a true minus, a narrow space that does not break before the per cent sign. */

export const NARROW = '\u202f';

/** A fraction as per cent: 0.0583 → `5.8 %`. */
export function percent(fraction: number, decimals = 1): string {
  return `${signed(fraction * 100, decimals)}${NARROW}%`;
}

/** A number with fixed decimals and a true minus sign; −0 is written 0. */
export function signed(value: number, decimals = 0): string {
  const written = value.toFixed(decimals);
  return Number(written) === 0 ? Math.abs(value).toFixed(decimals).replace('-', '') : written.replace('-', '−');
}

/** A raw count: whole where it is whole, else one decimal. */
export function count(value: number): string {
  return signed(value, Number.isInteger(value) ? 0 : 1);
}
