/** The profiles that come with the program. */
import { demoProfile } from './demo-profile.ts';
import { packedProfiles } from './packed-profiles.ts';
import type { Profile } from './profile.ts';

export const bundledProfiles: readonly Profile[] = [demoProfile, ...packedProfiles];

/** The profile of the pads with these numbers; null where the program knows none. */
export function findProfile(vendorId: number, productId: number): Profile | null {
  const fits = (profile: Profile): boolean =>
    profile.pads.some((pad) => pad.vendorId === vendorId && pad.productId === productId);
  return bundledProfiles.find(fits) ?? null;
}

export function profileById(id: string): Profile | null {
  return bundledProfiles.find((profile) => profile.id === id) ?? null;
}
