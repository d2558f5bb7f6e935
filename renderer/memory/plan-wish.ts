/** From what is chosen on the screen to what the bench is asked to plan. */
import type { LayerName } from '../../core/image/memory-map.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { ImageDetails, PlanWish } from './memory-images.svelte.ts';

export const PLAN_KINDS = [
  { value: 'proposal', says: 'the proposal', needsBoth: false },
  { value: 'user:factory', says: 'user into factory', needsBoth: true },
  { value: 'factory:user', says: 'factory into user', needsBoth: true },
] as const;

export type PlanKind = (typeof PLAN_KINDS)[number]['value'];

export interface ChosenPlan {
  readonly kind: PlanKind;
  readonly into: LayerName;
  readonly sticks: readonly StickId[];
  readonly proposed: Readonly<Partial<Record<StickId, StickMapping>>>;
}

/** Null where there is nothing to store. */
export function wishOf({ kind, into, sticks, proposed }: ChosenPlan): PlanWish | null {
  if (sticks.length === 0) return null;
  if (kind !== 'proposal') {
    const [from, to] = kind === 'user:factory' ? (['user', 'factory'] as const) : (['factory', 'user'] as const);
    return { carry: { from, to, sticks: [...sticks] } };
  }
  const mappings = Object.fromEntries(
    sticks.flatMap((stick) => {
      const mapping = proposed[stick];
      return mapping === undefined ? [] : [[stick, mapping] as const];
    }),
  );
  return Object.keys(mappings).length === 0 ? null : { store: { layer: into, mappings } };
}

/** Those of the sticks that some layer of the image holds. */
export function heldSticks(details: ImageDetails, sticks: readonly StickId[]): StickId[] {
  return sticks.filter((stick) => details.layers.some((layer) => layer.sticks.some((one) => one.stick === stick)));
}
