/** The plain zone that a bench asks about first, as a chain of one stage, and back. */
import type { Chain, Stage } from './chain.ts';

/** Parameters in fractions of full deflection; `outer` says nothing of a cut (`axial`, `radial`). */
export interface Zone {
  readonly shape: 'axial' | 'radial' | 'scaledRadial';
  readonly inner: number;
  readonly outer: number;
}

/** A cut has no outer edge: what passes it comes out unchanged. */
export function hasOuter(zone: Zone): boolean {
  return zone.shape === 'scaledRadial';
}

export function stageOf({ shape, inner, outer }: Zone): Stage {
  return shape === 'scaledRadial' ? { zone: shape, inner, outer } : { zone: shape, inner };
}

export function chainOf(zone: Zone): Chain {
  return { kind: 'stickwright-chain', version: 1, name: zoneName(zone), stages: [stageOf(zone)], needs: null };
}

/** Null where the stage is no plain zone in force: another kind, switched off, or an axial one that is more than a cut. */
export function zoneOfStage(stage: Stage): Zone | null {
  if (!('zone' in stage) || stage.off === true) return null;
  if (stage.zone === 'scaledRadial') return { shape: stage.zone, inner: stage.inner, outer: stage.outer ?? 1 };
  const isCut = stage.zone === 'radial' || (stage.zone === 'axial' && Object.keys(stage).length === 2);
  return isCut ? { shape: stage.zone, inner: stage.inner, outer: 1 } : null;
}

/** The zone that the chain is, or null where it is more than one plain zone, or none. */
export function zoneOf({ stages }: Chain): Zone | null {
  const [only] = stages;
  return stages.length === 1 && only !== undefined ? zoneOfStage(only) : null;
}

/** E.g. `radial 8 %, cut` or `scaled radial 8 to 95 %`. */
export function zoneName(zone: Zone): string {
  const inner = percentText(zone.inner);
  if (hasOuter(zone)) return `scaled radial ${inner} to ${percentText(zone.outer)} %`;
  return `${zone.shape} ${inner} %, cut`;
}

/** A fraction as per cent without the sign and without needless zeros: 0.08 → `8`. */
export function percentText(fraction: number): string {
  return String(Math.round(fraction * 1e6) / 1e4);
}
