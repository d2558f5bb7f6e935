/**
 * The contract between the bench service and whoever uses it: every call with its request and reply, every event.
 * Shells are derived from it and check each message against it at run time, in both directions.
 */
import { z } from 'zod';
import { gateCalls, gateEvents } from './gate-calls.ts';
import { memoryCalls, memoryEvents } from './memory-calls.ts';
import {
  handMovementSchema,
  healthSchema,
  padDetailsSchema,
  padHandleSchema,
  padInHandSchema,
  padSummarySchema,
  proposalReplySchema,
  proposalWishSchema,
  settingsSchema,
  stickIdSchema,
  surveyHandleSchema,
  surveySummarySchema,
} from './schemas.ts';
import { surveyDetailsSchema } from './survey-details.ts';
import { surveyRequestSchema, surveyStateSchema } from './survey-state.ts';

const nothing = z.object({});

export const calls = {
  'bench.hello': {
    request: nothing,
    reply: z.object({
      program: z.string(),
      version: z.string(),
      shell: z.enum(['electron', 'local', 'commandLine']),
      /** One plain line each, e.g. the system package that is missing. */
      notices: z.array(z.string()),
    }),
  },
  'pads.list': { request: nothing, reply: z.array(padSummarySchema) },
  'pads.open': { request: z.object({ pad: padHandleSchema }), reply: padDetailsSchema },
  'pads.close': { request: z.object({ pad: padHandleSchema }), reply: nothing },
  /** The pad in hand, for whoever comes later than the last `hand.changed`. */
  'pads.inHand': { request: nothing, reply: padInHandSchema },
  /** Takes a pad in hand and closes the one before; refused while a survey or a memory session of that one is under way. */
  'pads.take': { request: z.object({ pad: padHandleSchema }), reply: padInHandSchema },
  /** Plugs a further simulated pad in, by the name of its fault. */
  'pads.plugDemo': { request: z.object({ name: z.string().max(40) }), reply: padSummarySchema },
  'pads.demos': { request: nothing, reply: z.array(z.object({ name: z.string(), says: z.string() })) },
  /** Moves the stick of a simulated pad; refused for any other. */
  'demo.hand': {
    request: z.object({ pad: padHandleSchema, stick: stickIdSchema, does: handMovementSchema }),
    reply: nothing,
  },
  /** Pulls the cable of a simulated pad, as one would a real one's: it is gone until it is plugged in again. */
  'demo.unplug': { request: z.object({ pad: padHandleSchema }), reply: nothing },
  'demo.plugIn': { request: z.object({ pad: padHandleSchema }), reply: nothing },
  /** Takes a simulated pad out of the list for good; refused while a survey or a memory session of it is under way. */
  'demo.takeAway': { request: z.object({ pad: padHandleSchema }), reply: nothing },
  'survey.start': {
    request: surveyRequestSchema,
    reply: surveyStateSchema,
  },
  'survey.say': {
    request: z.object({
      survey: surveyHandleSchema,
      what: z.enum(['confirm', 'repeat', 'skip', 'abort']),
    }),
    reply: surveyStateSchema,
  },
  /** Surveys that are not over, for whoever comes later than their last `survey.state`. */
  'surveys.underway': { request: nothing, reply: z.array(surveyStateSchema) },
  'surveys.list': { request: nothing, reply: z.array(surveySummarySchema) },
  'surveys.open': { request: z.object({ survey: surveyHandleSchema }), reply: surveyDetailsSchema },
  'surveys.propose': {
    request: z.object({ survey: surveyHandleSchema, stick: stickIdSchema, wish: proposalWishSchema }),
    reply: proposalReplySchema,
  },
  /** A stretch of a survey's log as raw counts against time: microseconds and counts in turn, thinned without losing a peak. */
  'surveys.strip': {
    request: z.object({
      survey: surveyHandleSchema,
      stick: stickIdSchema,
      fromUs: z.number().min(0),
      toUs: z.number().min(0),
      slices: z.number().int().min(1).max(2000),
    }),
    reply: z.object({ x: z.array(z.number()), y: z.array(z.number()) }),
  },
  /** A log file's contents in pieces of at most 512 KiB, base64; the last piece answers with the survey. */
  'surveys.import': {
    request: z.object({
      upload: z.string().min(1).max(64),
      name: z.string().max(200),
      piece: z.string().max(700_000),
      last: z.boolean(),
    }),
    reply: z.object({ survey: surveySummarySchema.nullable() }),
  },
  /** A log's contents in pieces, base64; `next` is null after the last. */
  'surveys.export': {
    request: z.object({ survey: surveyHandleSchema, from: z.number().int().min(0) }),
    reply: z.object({ piece: z.string(), next: z.number().nullable() }),
  },
  ...gateCalls,
  'settings.read': { request: nothing, reply: settingsSchema },
  'settings.write': { request: settingsSchema.partial(), reply: settingsSchema },
  ...memoryCalls,
} as const;

export const events = {
  'pads.changed': z.array(padSummarySchema),
  'pad.health': healthSchema,
  'hand.changed': padInHandSchema,
  'survey.state': surveyStateSchema,
  'surveys.changed': z.array(surveySummarySchema),
  ...gateEvents,
  'settings.changed': settingsSchema,
  ...memoryEvents,
} as const;

export type CallName = keyof typeof calls;
export type EventName = keyof typeof events;
export type Request<N extends CallName> = z.infer<(typeof calls)[N]['request']>;
export type Reply<N extends CallName> = z.infer<(typeof calls)[N]['reply']>;
export type EventPayload<N extends EventName> = z.infer<(typeof events)[N]>;
