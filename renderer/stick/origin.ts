/** Where yours comes from: numbers of the survey itself, or taken from a file or a kept mapping, whose pad may be another. */
import { z } from 'zod';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import { kinshipOf, ownerSchema, sayOwner, type PadOwner } from '../../core/pad/owner.ts';
import type { Domain } from '../../core/pad/stick.ts';
import { failed, type Problem } from '../../core/result.ts';

/** What is known of the source of some numbers. */
export interface Origin {
  /** Null where it is known by nothing. */
  readonly pad: PadOwner | null;
  readonly domain: Domain | null;
}

/** A source outside of the survey. */
export interface Taken extends Origin {
  /** `kept` under this name with the bench, or a `file` of this name. */
  readonly by: 'kept' | 'file';
  readonly name: string;
}

/** A mapping of one's own; `taken` is null where it was made of the survey's own numbers. */
export interface OwnMapping extends StickMapping {
  readonly taken: Taken | null;
}

export const takenSchema = z.object({
  by: z.enum(['kept', 'file']),
  name: z.string(),
  pad: ownerSchema.nullable(),
  domain: z.enum(['sensor', 'reported']).nullable(),
});

const COUNTS = { sensor: 'sensor counts', reported: 'reported counts' } as const;

/** Why numbers of a source cannot become numbers for the surveyed stick, or null. Both pads are named. */
export function whyNotTaken(taken: Taken, survey: Origin): Problem | null {
  if (taken.pad !== null && survey.pad !== null && kinshipOf(taken.pad, survey.pad) === 'other')
    return failed(
      'taken-other-pad',
      `${taken.name} is a mapping of another pad (${sayOwner(taken.pad)}) than the surveyed one (${sayOwner(survey.pad)}); take one of this pad.`,
    ).problem;
  if (taken.domain === null || survey.domain === null || taken.domain === survey.domain) return null;
  return failed(
    'taken-other-counts',
    `${taken.name} is a mapping of ${COUNTS[taken.domain]}, the survey has ${COUNTS[survey.domain]}: the two are not the same numbers. Take a mapping of ${COUNTS[survey.domain]}.`,
  ).problem;
}

/** What stands beside numbers whose source is in doubt, one sentence; null where nothing is. */
export function doubtOf(taken: Taken | null, survey: Origin): string | null {
  if (taken === null) return null;
  if (kinshipOf(taken.pad, survey.pad) === 'unknown')
    return taken.pad === null
      ? `Yours is from ${taken.name}, which does not say of which pad it is: check that it is of this one.`
      : `Yours is from ${taken.name} of a pad of this kind whose serial number is not known: check that it is this one.`;
  return taken.domain === null
    ? `Yours is from ${taken.name}, which does not say what its counts mean: check that they are those of this survey.`
    : null;
}
