/** Everything that is measured of one log; `core/findings/judge-track.ts` adds the findings that `measure` prints. */
import type { StickEvidence } from '../capture/evidence/evidence.ts';
import { gatherEvidence } from '../capture/evidence/gather-evidence.ts';
import { LEAST_RELEASES } from '../capture/evidence/least-releases.ts';
import type { Track } from '../capture/evidence/track.ts';
import { withoutLosses } from '../capture/evidence/without-losses.ts';
import { chooseMapping } from '../mapping/choose-mapping.ts';
import type { MappingFrom, PadMapping, StickMapping } from '../mapping/mapping.ts';
import { storedMapping } from '../mapping/stored-mapping.ts';
import { STICKS, type StickId } from '../pad/stick.ts';
import type { Problem } from '../result.ts';
import type { AllanMeasure } from './allan-measure.ts';
import { measureAllan } from './allan.ts';
import { measureDisturbance } from './disturbance.ts';
import { measureFlick } from './flick.ts';
import { measureInputs } from './inputs.ts';
import { sayUnread } from './say-unread.ts';
import { measureTravel } from './travel.ts';
import { measureWarmUp } from './warm-up.ts';
import type { DisturbanceMeasure } from './disturbance-measure.ts';
import type { FlickMeasure } from './flick-measure.ts';
import type { InputsMeasure } from './inputs-measure.ts';
import { measureRest } from './rest.ts';
import type { RestMeasure } from './rest-measure.ts';
import { measureRim } from './rim.ts';
import type { RimMeasure } from './rim-measure.ts';
import { measureLog, type LogMeasure } from './timing.ts';
import type { TravelMeasure } from './travel-measure.ts';
import type { WarmUpMeasure } from './warm-up-measure.ts';

export interface StickReport {
  readonly rest: RestMeasure | null;
  readonly rim: RimMeasure | null;
  readonly travel: TravelMeasure | null;
  readonly flick: FlickMeasure | null;
  readonly disturbance: readonly DisturbanceMeasure[] | null;
  readonly allan: AllanMeasure | null;
  readonly warmUp: WarmUpMeasure | null;
  /** What this stick's deflections stand under. */
  readonly mapping: StickMapping;
  readonly mappingFrom: MappingFrom;
  readonly captures: StickEvidence['captures'];
  /** Why rest, rim or a capture that was taken is null, and what to do. */
  readonly lacks: readonly Problem[];
}

export interface TrackMeasures {
  readonly log: LogMeasure;
  readonly mappingFrom: MappingFrom;
  /** `marked` where the captures of any stick are; each stick says it for itself too. */
  readonly captures: StickEvidence['captures'];
  readonly sticks: Readonly<Partial<Record<StickId, StickReport>>>;
  readonly inputs: InputsMeasure | null;
}

/**
 * Deflections stand under the mapping given (from a file), else the pad's stored one, else the fields' logical range; a
 * stick that the given mapping leaves out goes on to the next. Sections without a capture are null. `releasesNeeded`: how many
 * releases a statement on the scatter of the rest takes.
 */
export function measureTrack(whole: Track, mapping: PadMapping | null, releasesNeeded = LEAST_RELEASES): TrackMeasures {
  const track = withoutLosses(whole);
  const stored = storedMapping(track.marks);
  const sticks = STICKS.flatMap((stick) => {
    if (track.sticks[stick] === undefined) return [];
    const evidence = gatherEvidence(track, stick, releasesNeeded);
    const used = chooseMapping(evidence.fields, mapping?.[stick], stored?.[stick]);
    return [[stick, { ...measureStick(track, stick, evidence, used.mapping), ...used }] as const];
  });
  return {
    log: measureLog(track),
    mappingFrom: mapping !== null ? 'file' : stored !== null ? 'stored' : 'range',
    captures: sticks.some(([, report]) => report.captures === 'marked') ? 'marked' : 'inferred',
    sticks: Object.fromEntries(sticks),
    inputs: measureInputs(track),
  };
}

function measureStick(
  track: Track,
  stick: StickId,
  evidence: StickEvidence,
  mapping: StickMapping,
): Omit<StickReport, 'mapping' | 'mappingFrom'> {
  const read = {
    rest: measureRest(evidence, mapping),
    travel: measureTravel(track, stick, evidence),
    flick: measureFlick(track, stick, evidence, mapping),
    disturbance: measureDisturbance(track, stick, evidence),
  };
  return {
    ...read,
    rim: measureRim(evidence, mapping),
    allan: measureAllan(track, stick, evidence),
    warmUp: measureWarmUp(track, stick),
    captures: evidence.captures,
    lacks: [...(evidence.lacks ?? []), ...sayUnread(track, stick, read)],
  };
}
