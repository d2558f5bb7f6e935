/** From what is chosen on the screen to what the bench is asked to plan. */
import type { LayerName } from '../../core/image/memory-map.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { SurveyDetails } from '../stick/opened-survey.svelte.ts';
import type { ImageDetails, PlanWish } from './memory-images.svelte.ts';

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
  /** Where those are from; null where that is not known, and then they are not planned. */
  readonly from: NumbersFrom | null;
}

export type NumbersFrom = Extract<PlanWish, { store: unknown }>['store']['from'];

/** Null where there is nothing to store. */
export function wishOf({ kind, into, sticks, mappings: held, from: source }: ChosenPlan): PlanWish | null {
  if (sticks.length === 0) return null;
  if (isCarry(kind)) {
    const [from, to] = kind === 'user:factory' ? (['user', 'factory'] as const) : (['factory', 'user'] as const);
    return { carry: { from, to, sticks: [...sticks] } };
  }
  const mappings = Object.fromEntries(
    sticks.flatMap((stick) => {
      const mapping = held[stick];
      return mapping === undefined ? [] : [[stick, mapping] as const];
    }),
  );
  if (source === null || Object.keys(mappings).length === 0) return null;
  return { store: { layer: into, mappings, from: source } };
}

/** Whether it copies one layer to the other, rather than storing numbers from elsewhere. */
export function isCarry(kind: PlanKind): kind is 'user:factory' | 'factory:user' {
  return kind === 'user:factory' || kind === 'factory:user';
}

/** Those of the sticks that some layer of the image holds. */
export function heldSticks(details: ImageDetails, sticks: readonly StickId[]): StickId[] {
  return sticks.filter((stick) => details.layers.some((layer) => layer.sticks.some((one) => one.stick === stick)));
}

/** Why what is known of a survey cannot be stored, or null. */
export function whyNotPlanned(survey: SurveyDetails | null): string | null {
  if (survey === null) return 'Choose a survey above: its proposal is what would be stored.';
  if (survey.log.domain === 'reported')
    return 'The survey has reported counts, after the pad’s own mapping: its proposal is for the host alone and never becomes a patch.';
  return null;
}
