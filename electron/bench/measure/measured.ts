/** What is worked out from a whole log for the screen: measures and findings, and the evidence of each stick with its mapping. */
import type { Track } from '../../../core/capture/evidence/track.ts';
import type { Limits } from '../../../core/findings/limits.ts';
import { ownerOf } from '../../../core/pad/owner.ts';
import { surveyDetailsSchema } from '../../../shared/survey-details.ts';
import type { z } from 'zod';
import { judgeLog } from './judge-log.ts';

export const measuredSchema = surveyDetailsSchema.omit({ survey: true, name: true });
export type Measured = z.infer<typeof measuredSchema>;

/** Mappings are the pad's stored ones where the log has them, else the fields' logical range. */
export function measureForScreen(track: Track, limits: Limits): Measured {
  const { sticks, report } = judgeLog(track, { mapping: null, limits });
  return measuredSchema.parse({
    identity: track.header.pad,
    pad: ownerOf(track.header.pad, track.header.pad.unit),
    log: report.log,
    mappingFrom: report.mappingFrom,
    sticks,
    report,
  });
}
