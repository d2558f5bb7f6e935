/** From what is chosen on the screen to what the bench is asked to plan. */
import type { LayerName } from '../../core/image/memory-map.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';
import type { ImageDetails, PlanWish } from './memory-images.svelte.ts';
import type { NumbersFrom } from './plan-source.ts';

export const PLAN_KINDS = [
  { value: 'proposal', says: 'the proposal', needsBoth: false },
  { value: 'yours', says: 'yours', needsBoth: false },
  { value: 'kept', says: 'a kept mapping', needsBoth: false },
  { value: 'user:factory', says: 'user into factory', needsBoth: true },
  { value: 'factory:user', says: 'factory into user', needsBoth: true },
] as const;

export type PlanKind = (typeof PLAN_KINDS)[number]['value'];

export interface ChosenPlan {
  readonly kind: PlanKind;
  readonly into: LayerName;
  readonly sticks: readonly StickId[];
  /** What the chosen kind would store, where it is no carrying. */
  readonly mappings: Readonly<Partial<Record<StickId, StickMapping>>>;
  /** Where those are from; null where that cannot be said, and then they are not planned. */
  readonly from: NumbersFrom | null;
}

/** Null where there is nothing to store, or not something for each of the sticks. */
export function wishOf({ kind, into, sticks, mappings: held, from: source }: ChosenPlan): PlanWish | null {
  if (sticks.length === 0) return null;
  if (isCarry(kind)) {
    const [from, to] = kind === 'user:factory' ? (['user', 'factory'] as const) : (['factory', 'user'] as const);
    return { carry: { from, to, sticks: [...sticks] } };
  }
  const mappings = Object.fromEntries(
    sticks.flatMap((stick) => {
      const mapping = held[stick];
      // Without what the screen knows of it beyond its numbers.
      return mapping === undefined ? [] : [[stick, { x: { ...mapping.x }, y: { ...mapping.y } }] as const];
    }),
  );
  if (source === null || Object.keys(mappings).length < sticks.length) return null;
  return { store: { layer: into, mappings, from: source } };
}

/** Whether it copies one layer to the other, rather than storing numbers from elsewhere. */
export function isCarry(kind: PlanKind): kind is 'user:factory' | 'factory:user' {
  return kind === 'user:factory' || kind === 'factory:user';
}

/** The layer that the plan changes. */
export function targetOf(kind: PlanKind, into: LayerName): LayerName {
  return isCarry(kind) ? (kind === 'user:factory' ? 'factory' : 'user') : into;
}

/** Those sticks that some layer of the image holds. */
export function heldSticks({ layers }: Pick<ImageDetails, 'layers'>): StickId[] {
  return STICKS.filter((stick) => layers.some((layer) => layer.sticks.some((one) => one.stick === stick)));
}
