/** What is worked out from a whole log for the screen: measures and findings, and the evidence of each stick with its mapping. */
import type { Track } from '../../../core/capture/evidence/track.ts';
import type { Limits } from '../../../core/findings/limits.ts';
import { ownerOf } from '../../../core/pad/owner.ts';
import { STICKS } from '../../../core/pad/stick.ts';
import { problemSchema, stickIdSchema } from '../../../shared/schemas.ts';
import { surveyDetailsSchema } from '../../../shared/survey-details.ts';
import { z } from 'zod';
import { knownOf, type ToldGates } from './gate-logs.ts';
import { judgeLog } from './judge-log.ts';

export const measuredSchema = surveyDetailsSchema.omit({ survey: true, name: true, gates: true }).extend({
  /** Why a gate that should be known is not. */
  untold: z.partialRecord(stickIdSchema, problemSchema),
});
export type Measured = z.infer<typeof measuredSchema>;

/** Mappings are the pad's stored ones where the log has them, else the fields' logical range. */
export function measureForScreen(track: Track, limits: Limits, told: ToldGates): Measured {
  const { sticks, report } = judgeLog(track, { mapping: null, limits, gates: knownOf(told) });
  const untold = STICKS.flatMap((stick) => {
    const gate = told[stick];
    return gate?.ok === false ? [[stick, gate.problem] as const] : [];
  });
  return measuredSchema.parse({
    identity: track.header.pad,
    pad: ownerOf(track.header.pad, track.header.pad.unit),
    log: report.log,
    mappingFrom: report.mappingFrom,
    sticks,
    untold: Object.fromEntries(untold),
    report,
  });
}
