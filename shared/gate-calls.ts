/** The calls and the event around what is known of a survey's gates from other surveys. */
import { z } from 'zod';
import { gateChoiceSchema, stickIdSchema, surveyHandleSchema } from './schemas.ts';

const ofStick = z.object({ survey: surveyHandleSchema, stick: stickIdSchema });

export const gateCalls = {
  /** The other finished surveys of this pad that hold a rest and a rim of the stick, newest first. */
  'gates.offered': { request: ofStick, reply: z.array(surveyHandleSchema) },
  /** Keeps what a stick's gate is known from in this survey, unless that cannot tell of it; null takes it back. */
  'gates.choose': { request: ofStick.extend({ choice: gateChoiceSchema.nullable() }), reply: z.object({}) },
} as const;

export const gateEvents = {
  /** The survey is judged by other terms from now on. */
  'survey.judged': z.object({ survey: surveyHandleSchema }),
} as const;
