/** What a plan begins with before a hand chooses: as little as was asked for, where a host reads it first. */
import type { Verdict } from '../../core/findings/finding.ts';
import type { LayerName } from '../../core/image/memory-map.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { ImageDetails } from './memory-images.svelte.ts';
import { isCarry, type PlanKind } from './plan-wish.ts';

type Some = Readonly<Partial<Record<StickId, unknown>>>;

/** The layer that the first host takes: what is stored elsewhere it would not see. Null where no layer is held. */
export function usualLayer({ hosts, layers }: Pick<ImageDetails, 'hosts' | 'layers'>): LayerName | null {
  return hosts.find(({ layer }) => layer !== null)?.layer ?? layers[0]?.layer ?? null;
}

export interface UsualSticks {
  readonly kind: PlanKind;
  /** Those that the image holds. */
  readonly held: readonly StickId[];
  readonly verdicts: Readonly<Partial<Record<StickId, Verdict>>>;
  readonly owns: Some;
  readonly kept: Some;
}

/** The sticks whose verdict asks for new numbers, and those that a hand made or named numbers for. */
export function usualSticks({ kind, held, verdicts, owns, kept }: UsualSticks): StickId[] {
  if (isCarry(kind)) return [...held];
  if (kind === 'kept') return held.filter((stick) => kept[stick] !== undefined);
  return held.filter((stick) => verdicts[stick] === 'recalibrate' || (kind === 'yours' && owns[stick] !== undefined));
}

/** One plain sentence before the fall-back is changed; null for another layer. */
export function factorySentence(layer: LayerName): string | null {
  return layer === 'factory'
    ? 'The factory layer is the fall-back: what is read where no other layer is valid. Changing it is confirmed by itself.'
    : null;
}
