/** A finished survey or an imported log as the bench gives it: what every view is drawn from. */
import { z } from 'zod';
import { ownerSchema } from '../core/pad/owner.ts';
import { stickEvidenceSchema } from './evidence-schemas.ts';
import { logMeasureSchema, measureReportSchema } from './report-schemas.ts';
import {
  gateChoiceSchema,
  identitySchema,
  problemSchema,
  stickIdSchema,
  stickMappingSchema,
  surveyHandleSchema,
} from './schemas.ts';

export const surveyDetailsSchema = z.object({
  survey: surveyHandleSchema,
  name: z.string(),
  identity: identitySchema,
  /** The pad that it is of. */
  pad: ownerSchema,
  log: logMeasureSchema,
  mappingFrom: z.enum(['file', 'stored', 'range']),
  sticks: z.partialRecord(
    stickIdSchema,
    z.object({
      evidence: stickEvidenceSchema,
      current: stickMappingSchema,
      /** What the pad stores for the stick, where the log says so; null in a layer that holds nothing good. */
      layers: z.object({ user: stickMappingSchema.nullable(), factory: stickMappingSchema.nullable() }).nullable(),
    }),
  ),
  /** What the gates are known from; `problem` where that survey does not tell: then nothing is known of the gate. */
  gates: z.partialRecord(stickIdSchema, gateChoiceSchema.extend({ problem: problemSchema.nullable() })),
  /** What `measure` prints of the log: measures, findings and verdicts. */
  report: measureReportSchema,
});
