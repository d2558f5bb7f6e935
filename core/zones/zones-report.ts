/** Everything that `zones` prints of one log and a chain. */
import { gatherEvidence } from '../capture/evidence/gather-evidence.ts';
import { LEAST_RELEASES } from '../capture/evidence/least-releases.ts';
import type { Track } from '../capture/evidence/track.ts';
import { chooseMapping } from '../mapping/choose-mapping.ts';
import type { MappingFrom, PadMapping } from '../mapping/mapping.ts';
import { storedMapping } from '../mapping/stored-mapping.ts';
import { STICKS, type StickId } from '../pad/stick.ts';
import { answerZones } from './answer-chain.ts';
import type { Chain, ZoneAnswer } from './chain.ts';

export interface ZonesReport {
  readonly kind: 'stickwright-zones';
  readonly version: 1;
  /** Name of the chain. */
  readonly chain: string;
  readonly sticks: Readonly<Partial<Record<StickId, ZoneAnswer & { readonly mappingFrom: MappingFrom }>>>;
}

/** The mapping of each stick is chosen as for `measure`; so many releases are needed for a statement beyond what was seen. */
export function answerTrack(
  track: Track,
  given: PadMapping | null,
  chain: Chain,
  releasesNeeded = LEAST_RELEASES,
): ZonesReport {
  const stored = storedMapping(track.marks);
  const sticks = STICKS.flatMap((stick) => {
    if (track.sticks[stick] === undefined) return [];
    const evidence = gatherEvidence(track, stick, releasesNeeded);
    const { mapping, mappingFrom } = chooseMapping(evidence.fields, given?.[stick], stored?.[stick]);
    return [[stick, { ...answerZones(evidence, mapping, chain), mappingFrom }] as const];
  });
  return { kind: 'stickwright-zones', version: 1, chain: chain.name, sticks: Object.fromEntries(sticks) };
}
