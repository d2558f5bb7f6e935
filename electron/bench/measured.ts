/** What is worked out from a whole log for the screen: measures and findings, and the evidence of each stick with its mapping. */
import { gatherEvidence } from '../../core/capture/gather-evidence.ts';
import type { Track } from '../../core/capture/track.ts';
import { judgeTrack } from '../../core/findings/judge-track.ts';
import { stickLayers } from '../../core/findings/stored-layers.ts';
import type { Limits } from '../../core/findings/limits.ts';
import { rangeMapping } from '../../core/mapping/range-mapping.ts';
import { storedMapping } from '../../core/mapping/stored-mapping.ts';
import { ownerOf } from '../../core/pad/owner.ts';
import { STICKS } from '../../core/pad/stick.ts';
import { surveyDetailsSchema } from '../../shared/survey-details.ts';
import type { z } from 'zod';

export const measuredSchema = surveyDetailsSchema.omit({ survey: true, name: true });
export type Measured = z.infer<typeof measuredSchema>;

/** Mappings are the pad's stored ones where the log has them, else the fields' logical range. */
export function measureForScreen(track: Track, limits: Limits): Measured {
  const stored = storedMapping(track.marks);
  const sticks = STICKS.flatMap((stick) => {
    const fields = track.sticks[stick]?.fields;
    if (fields === undefined) return [];
    const current = stored?.[stick] ?? rangeMapping(fields);
    const layers = stickLayers(track.marks, stick);
    return [[stick, { evidence: gatherEvidence(track, stick), current, layers }] as const];
  });
  const report = judgeTrack(track, null, limits);
  return measuredSchema.parse({
    identity: track.header.pad,
    pad: ownerOf(track.header.pad, track.header.pad.unit),
    log: report.log,
    mappingFrom: stored === null ? 'range' : 'stored',
    sticks: Object.fromEntries(sticks),
    report,
  });
}
