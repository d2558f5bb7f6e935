/** Whose numbers a plan would store, and whose memory they would go into: what is foreign is not planned. */
import { kinshipOf, sayOwner, type PadOwner } from '../../core/pad/owner.ts';
import { failed, done, type Result } from '../../core/result.ts';
import type { Origin, OwnMapping } from '../stick/origin.ts';
import type { ImageSummary, PlanWish } from './memory-images.svelte.ts';

export type NumbersFrom = Extract<PlanWish, { store: unknown }>['store']['from'];

/** The pad that an image was read from or made for; null where that is not known. `kept` stands newest first. */
export function ownerOfImage(list: readonly ImageSummary[], image: string): PadOwner | null {
  const kept = list.find((one) => one.image === image)?.kept ?? [];
  return kept.find(({ pad }) => pad !== null)?.pad ?? null;
}

/** Why numbers of a source never go into this memory, or null. `what` names them, e.g. `The survey`. */
export function whyForeign(what: string, source: Origin, memory: PadOwner | null): string | null {
  if (source.domain === 'reported')
    return `${what} has reported counts, after the pad’s own mapping: such numbers are for the host alone and never become a patch.`;
  if (source.pad === null || memory === null || kinshipOf(source.pad, memory) !== 'other') return null;
  return `${what} is of another pad (${sayOwner(source.pad)}) than this memory (${sayOwner(memory)}): its numbers are not stored there.`;
}

/**
 * Where yours is from, of all the sticks together: the survey, or the one source outside of it that was taken for some of them.
 * Refused where they are from two such sources. `keptNames` are the mappings that are still kept.
 */
export function sourceOfYours(
  survey: string,
  origin: Origin,
  owns: readonly OwnMapping[],
  keptNames: readonly string[],
): Result<NumbersFrom> {
  const outside = owns.flatMap(({ taken }) =>
    taken === null || (kinshipOf(taken.pad, origin.pad) === 'same' && taken.domain === origin.domain) ? [] : [taken],
  );
  const [first, second] = outside;
  if (first === undefined) return done({ survey });
  if (second !== undefined && (first.by !== second.by || first.name !== second.name))
    return failed(
      'plan-two-sources',
      `The sticks are from two sources, ${first.name} and ${second.name}; plan one stick at a time.`,
    );
  if (first.by === 'kept' && keptNames.includes(first.name)) return done({ kept: first.name });
  return done({ file: first.pad, domain: first.domain });
}
