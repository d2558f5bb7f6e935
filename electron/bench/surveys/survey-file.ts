/** What stands in a survey's folder beside its log, so that it can be listed without reading the log. */
import { z } from 'zod';
import { gateChoiceSchema, stickIdSchema, surveySummarySchema } from '../../../shared/schemas.ts';

export const RECORD_FILE = 'survey.json';
export const LOG_FILE = 'log.padlog';
export const MEASURED_FILE = 'measured.json';
export const GATES_FILE = 'gates.json';

/** An older one does not say whose survey it is: the log's header does. */
export const surveyRecordSchema = surveySummarySchema.omit({ survey: true }).extend({
  kind: z.literal('stickwright-survey'),
  version: z.literal(1),
  pad: surveySummarySchema.shape.pad.optional(),
  domain: surveySummarySchema.shape.domain.optional(),
});

export type SurveyRecord = Omit<SurveySummary, 'survey'> & Pick<z.infer<typeof surveyRecordSchema>, 'kind' | 'version'>;
export type SurveySummary = z.infer<typeof surveySummarySchema>;

/** What the gates are known from, as a hand chose. */
export const gatesFileSchema = z.object({
  kind: z.literal('stickwright-gates'),
  version: z.literal(1),
  sticks: z.partialRecord(stickIdSchema, gateChoiceSchema),
});

/** Handles are the folders' names: they can name nothing outside of the surveys' folder. */
const HANDLE = /^[a-z0-9][a-z0-9-]{0,63}$/u;

export function isSurveyHandle(text: string): boolean {
  return HANDLE.test(text);
}

/** Sorted by name means sorted by time; `chance` keeps two of the same second apart. */
export function newHandle(startedAt: Date, chance: string): string {
  return `${startedAt.toISOString().slice(0, 19).replaceAll(/[:T]/gu, '-')}-${chance}`;
}
