/** The start-up exchange for the connection at hand. */
import type { PadIdentity } from './identity.ts';
import type { Profile, StartStep } from './profile.ts';

/** The steps of a profile that are sent on this connection, in order. */
export function startSteps(profile: Profile, transport: PadIdentity['transport']): readonly StartStep[] {
  return profile.start.filter((step) => step.only === undefined || step.only === transport);
}
