/** Everything that `measure` prints of one log (FORMATS): the measures, the findings held against limits, the verdicts. */
import type { Track } from '../capture/track.ts';
import type { PadMapping } from '../mapping/mapping.ts';
import { measureTrack, type TrackMeasures } from '../measure/measure-report.ts';
import { STICKS, type StickId } from '../pad/stick.ts';
import type { Finding, Verdict } from './finding.ts';

export interface MeasureReport extends TrackMeasures {
  readonly kind: 'stickwright-measure';
  readonly version: 1;
  readonly findings: readonly Finding[];
  readonly verdict: Readonly<Partial<Record<StickId, Verdict>>>;
}

/** Measures and judges a track under a mapping from a file, else the pad's stored one, else the fields' range. */
export function judgeTrack(track: Track, mapping: PadMapping | null): MeasureReport {
  const measures = measureTrack(track, mapping);
  const sticks = STICKS.filter((stick) => measures.sticks[stick] !== undefined);
  return {
    kind: 'stickwright-measure',
    version: 1,
    ...measures,
    findings: [],
    verdict: Object.fromEntries(sticks.map((stick) => [stick, 'undecided'] as const)),
  };
}
