/** The one zone that the Workbench asks about: the settings keep it, a chain of one stage is made of it. */
import type { Chain, Stage } from '../../core/zones/chain.ts';
import type { Settings } from '../settings/settings-state.svelte.ts';

export type Zone = Settings['zone'];

export const ZONE_SHAPES = [
  { value: 'axial', says: 'axial, cut' },
  { value: 'radial', says: 'radial, cut' },
  { value: 'scaledRadial', says: 'scaled radial' },
] as const satisfies readonly { value: Zone['shape']; says: string }[];

/** Largest parameter of a zone, as a fraction of full deflection. */
export const WIDEST = 1.5;

/** A cut has no outer edge: what passes it comes out unchanged. */
export function hasOuter(zone: Zone): boolean {
  return zone.shape === 'scaledRadial';
}

export function chainOf(zone: Zone): Chain {
  const stage: Stage = hasOuter(zone)
    ? { zone: 'scaledRadial', inner: zone.inner, outer: zone.outer }
    : { zone: zone.shape, inner: zone.inner };
  return { kind: 'stickwright-chain', version: 1, name: zoneName(zone), stages: [stage], needs: null };
}

/** E.g. `radial 8 %, cut` or `scaled radial 8 to 95 %`. */
export function zoneName(zone: Zone): string {
  const inner = percentText(zone.inner);
  if (hasOuter(zone)) return `scaled radial ${inner} to ${percentText(zone.outer)} %`;
  return `${zone.shape} ${inner} %, cut`;
}

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

/** A fraction as per cent without the sign and without needless zeros: 0.08 → `8`. */
export function percentText(fraction: number): string {
  return String(Math.round(fraction * 1e6) / 1e4);
}

/** What a hand writes into a per cent field as a fraction: `8`, `8.5`, `8,5`, `8 %`; null where it is no number. */
export function readPercent(text: string): number | null {
  const match = /^\s*([+-]?\d+(?:[.,]\d*)?|[+-]?[.,]\d+)\s*%?\s*$/.exec(text);
  if (match?.[1] === undefined) return null;
  const value = Number(match[1].replace(',', '.'));
  return Number.isFinite(value) ? value / 100 : null;
}
