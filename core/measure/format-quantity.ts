/** Numbers as a table writes them: an uncertainty decides how many digits stand. */
import { signed } from '../numeric/signed-text.ts';

export const NOTHING = '–';

/**
 * `2047.83 ± 0.42`: the expanded uncertainty with two significant digits, the value to the same place (JCGM 100, 7.2.6).
 * Without an uncertainty the value alone with `decimals`; a dash for null.
 */
export function formatQuantity(value: number | null, u95: number | null, decimals: number): string {
  if (value === null) return NOTHING;
  if (u95 === null) return signed(value, decimals);
  const places = u95 > 0 ? Math.min(9, Math.max(0, 1 - Math.floor(Math.log10(u95)))) : decimals;
  return `${signed(value, places)} ± ${signed(u95, places)}`;
}

/** Two parts of one quantity, e.g. `3.10, −0.24`. */
export function formatPair(
  pair: { readonly x: number | null; readonly y: number | null } | null,
  decimals: number,
): string {
  return pair === null
    ? NOTHING
    : `${formatQuantity(pair.x, null, decimals)}, ${formatQuantity(pair.y, null, decimals)}`;
}

/** A fraction as a number of per cent, the sign left to the unit's column. */
export function formatPercent(fraction: number | null, decimals = 2): string {
  return formatQuantity(fraction === null ? null : 100 * fraction, null, decimals);
}
