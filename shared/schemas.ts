/** Run-time schemas of everything that crosses between the bench service and a shell or the renderer. */
import { z } from 'zod';
import { gateSources } from '../core/findings/outline/known-gate.ts';
import { domainSchema } from '../core/pad/stick.ts';
import type { Chain } from '../core/zones/chain.ts';
import { ownerSchema } from '../core/pad/owner.ts';
import type { Consumer } from '../core/zones/consumer.ts';
import { parseChain } from '../core/zones/parse-chain.ts';
import { parseConsumer } from '../core/zones/parse-consumer.ts';

export const problemSchema = z.object({
  code: z.string(),
  says: z.string(),
  at: z.number().optional(),
});

export const stickIdSchema = z.enum(['left', 'right']);
export const stageSchema = z.enum(['received', 'fitted', 'calibrated', 'recheck']);

/** Opaque handles: the renderer never names a path. */
export const padHandleSchema = z.string().min(1).max(64);
export const surveyHandleSchema = z.string().min(1).max(64);
export const journalHandleSchema = z.string().min(1).max(64);

export const identitySchema = z.object({
  vendorId: z.number(),
  productId: z.number(),
  product: z.string(),
  serial: z.string().nullable(),
  transport: z.enum(['usb', 'bluetooth', 'simulated']),
});

/** A pad that is there, open or not. */
export const padSummarySchema = z.object({
  pad: padHandleSchema,
  identity: identitySchema,
  open: z.boolean(),
  /** Why it cannot be opened, or null. For `pad-no-permission`, `rule` has the exact udev rule and where to put it. */
  problem: problemSchema.nullable(),
  rule: z.object({ file: z.string(), text: z.string(), then: z.string() }).nullable(),
  /** What its memory says of it that no other pad does; null until that was read while the pad was open. */
  unit: z.string().nullable(),
});

/** An open pad: what is needed to decode its stream with the same pure functions as everywhere else. */
export const padDetailsSchema = z.object({
  pad: padHandleSchema,
  identity: identitySchema,
  domain: domainSchema,
  profile: z.string().nullable(),
  /** Hex of the report descriptor, or null. */
  descriptor: z.string().nullable(),
});

/** What the hand of a simulated pad does with a stick; `follow` does what a survey asks for. */
export const handMovementSchema = z.enum(['follow', 'rest', 'circle', 'wander']);

/** The pad in hand: one for the bench, whoever looks at it. */
export const padInHandSchema = z.object({
  /** Null where none is in hand. */
  pad: padDetailsSchema.nullable(),
  /** What its memory said of it that no other pad does; null until that was read. */
  unit: z.string().nullable(),
  /** It left and is in hand again once it returns. */
  gone: z.boolean(),
  /** What its hand was told last, by stick; empty for a real pad. */
  does: z.partialRecord(stickIdSchema, handMovementSchema),
  /** Why the pad that was to be taken by itself could not be opened, or null. */
  problem: problemSchema.nullable(),
});

export const healthSchema = z.object({
  pad: padHandleSchema,
  state: z.enum(['opening', 'streaming', 'silent', 'lost', 'closed']),
  rateHz: z.number().nullable(),
  gaps: z.number(),
  lost: z.number().nullable(),
  /** Longest delay of the event loop in the last second. */
  loopDelayMillis: z.number(),
  problem: problemSchema.nullable(),
});

export const pairSchema = z.object({ x: z.number(), y: z.number() });

export const surveySummarySchema = z.object({
  survey: surveyHandleSchema,
  name: z.string(),
  startedAt: z.string(),
  stage: stageSchema.nullable(),
  product: z.string(),
  simulated: z.boolean(),
  finished: z.boolean(),
  /** The pad that it is of. */
  pad: ownerSchema,
  domain: domainSchema,
});

/** What the gate of a stick is known from: another survey, and what that is of. */
export const gateChoiceSchema = z.object({ survey: surveyHandleSchema, from: z.enum(gateSources) });

const axisMappingSchema = z.object({ min: z.number(), centre: z.number(), max: z.number() });
export const stickMappingSchema = z.object({ x: axisMappingSchema, y: axisMappingSchema });

export const proposalWishSchema = z.object({
  aim: z.enum(['full-reach', 'even', 'edges']),
  centreBy: z.enum(['steadiest', 'mean']),
  guard: z.number().min(0).max(0.5),
});

/** The mapping and its reasons; the renderer predicts from the evidence with the same pure functions. */
export const proposalReplySchema = z.object({
  mapping: stickMappingSchema,
  aim: z.enum(['full-reach', 'even', 'edges']),
  centreBy: z.enum(['steadiest', 'mean']),
  guard: z.number(),
  reasons: z.array(
    z.object({
      of: z.string(),
      says: z.string(),
      u95: z.number().nullable(),
      leaveOneOut: z.object({ least: z.number(), greatest: z.number() }).nullable(),
    }),
  ),
  /** What new numbers would only hide, in one sentence; null where there is nothing. */
  hides: z.string().nullable(),
});

/** A mapping made by hand and kept under a name. */
export const keptMappingSchema = z.object({
  name: z.string().min(1).max(80),
  /** The pad it was made for. */
  product: z.string().max(200),
  /** Null where that was not kept: then it counts as known by nothing. */
  pad: ownerSchema.nullable().default(null),
  domain: domainSchema.nullable().default(null),
  sticks: z.partialRecord(stickIdSchema, stickMappingSchema),
});

/** A chain or a consumer as its file writes it; the file's own reader decides. */
const chainSchema = z.custom<Chain>((value) => parseChain(value).ok);
const consumerSchema = z.custom<Consumer>((value) => parseConsumer(value).ok);

export const settingsSchema = z.object({
  theme: z.enum(['system', 'light', 'dark']),
  sound: z.boolean(),
  speech: z.boolean(),
  confirmButton: z.number().int().min(1).max(128).nullable(),
  /** Values that the workshop has set for limits of findings, by the limit's id (core/findings/limits.ts). */
  limits: z.record(z.string().max(40), z.number().positive()),
  mappings: z.array(keptMappingSchema).max(200),
  /** The chain asked about; one plain zone is a chain of one stage. */
  chain: chainSchema,
  /** What stands between pad and program; null for nothing. */
  driver: chainSchema.nullable(),
  /** Games and drivers as the technician describes them, beside the starting set. */
  consumers: z.array(consumerSchema).max(200),
});
