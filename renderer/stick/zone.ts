/** The quick controls of one zone: its shapes, and which edges can be. */
import { hasOuter, percentText, type Zone } from '../../core/zones/one-zone.ts';

export const ZONE_SHAPES = [
  { value: 'axial', says: 'axial, cut' },
  { value: 'radial', says: 'radial, cut' },
  { value: 'scaledRadial', says: 'scaled radial' },
] as const satisfies readonly { value: Zone['shape']; says: string }[];

/** Largest parameter of a zone, as a fraction of full deflection. */
export const WIDEST = 1.5;

/** Why the inner edge cannot be this, or null. */
export function checkInner(zone: Zone, inner: number): string | null {
  if (hasOuter(zone) && inner >= zone.outer)
    return `Must be less than the outer edge, ${percentText(zone.outer)} %. The last good value stays.`;
  return inner < 0 || inner >= WIDEST ? `Write 0 to less than ${WIDEST * 100} %. The last good value stays.` : null;
}

/** Why the outer edge cannot be this, or null. */
export function checkOuter(zone: Zone, outer: number): string | null {
  if (outer <= zone.inner)
    return `Must be more than the inner edge, ${percentText(zone.inner)} %. The last good value stays.`;
  return outer > WIDEST ? `Write at most ${WIDEST * 100} %. The last good value stays.` : null;
}

/** What a hand writes into a per cent field as a fraction: `8`, `8.5`, `8,5`, `8 %`; null where it is no number. */
export function readPercent(text: string): number | null {
  const match = /^\s*([+-]?\d+(?:[.,]\d*)?|[+-]?[.,]\d+)\s*%?\s*$/.exec(text);
  if (match?.[1] === undefined) return null;
  const value = Number(match[1].replace(',', '.'));
  return Number.isFinite(value) ? value / 100 : null;
}
