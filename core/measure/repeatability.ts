/** When two surveys of one stick differ by more than surveying alone explains. */
import { repeatabilityTable } from './repeatability-table.ts';

export type StudiedMeasure = keyof typeof repeatabilityTable;

/**
 * Repeatability limit r = 1.96·√2·√(s² + q²/12), in the unit of the measure: two surveys of an unchanged stick differ by more in 5 % of
 * the cases. s is the program's own, from its gauge study; q the effective step of the pad's counts in that unit, 0 where it adds nothing.
 * Source: ISO 5725-6 (from memory).
 */
export function repeatabilityLimit(measure: StudiedMeasure, step = 0): number {
  return 1.96 * Math.SQRT2 * Math.sqrt(repeatabilityTable[measure] ** 2 + step ** 2 / 12);
}

/**
 * Whether two surveys of one stick differ in a measure: only beyond the repeatability limit, and beyond √(Ua² + Ub²) of their own
 * expanded uncertainties where these are known. Null where either has no value.
 */
export function differs(
  measure: StudiedMeasure,
  a: number | null,
  b: number | null,
  own: { readonly step?: number; readonly u95?: readonly [number, number] } = {},
): boolean | null {
  if (a === null || b === null || !Number.isFinite(a) || !Number.isFinite(b)) return null;
  const ofBoth = own.u95 === undefined ? 0 : Math.hypot(...own.u95);
  return Math.abs(a - b) > Math.max(repeatabilityLimit(measure, own.step), ofBoth);
}
