/** What is known of a pad's memory, and where a memory session stands while it runs. */
import { z } from 'zod';
import { askSchema, changeSchema, imageHandleSchema, mapIdSchema, planHandleSchema } from './image-schemas.ts';
import { identitySchema, journalHandleSchema, padHandleSchema, problemSchema } from './schemas.ts';

/** A write that was begun and whose end is not known: the program or the pad broke off. */
export const journalSummarySchema = z.object({
  journal: journalHandleSchema,
  /** ISO 8601. */
  at: z.string(),
  identity: identitySchema,
  /** What the pad's memory said of it that no other pad does; null where it says nothing. */
  unit: z.string().nullable(),
  /** The connected pad that it belongs to; null while that is not there. */
  pad: padHandleSchema.nullable(),
  map: mapIdSchema,
  /** The write was itself a restore. */
  restores: z.boolean(),
  /** The image before the write; kept. */
  before: imageHandleSchema,
  changes: z.array(changeSchema).readonly(),
});

/** A journal that cannot be understood: of whichever pad it was. */
const rottedJournalSchema = z.object({ journal: journalHandleSchema, says: z.string() });

/** Every write that there is a journal of; `ended` are those whose end is known. */
export const allJournalsSchema = z.object({
  open: z.array(journalSummarySchema),
  rotted: z.array(rottedJournalSchema),
  ended: z.array(journalSummarySchema),
});

/** What can be done with the memory of a pad. */
export const memoryAboutSchema = z.object({
  pad: padHandleSchema,
  /** Null where the program knows no memory session for this pad: `says` tells why. */
  protocol: z.object({ id: z.string(), name: z.string() }).nullable(),
  /** The technician has switched writing on for this pad. */
  writing: z.boolean(),
  /** Writing is possible over this connection. */
  mayWrite: z.boolean(),
  /** What stands in the way of reading or writing now, one sentence; null where nothing does. */
  says: z.string().nullable(),
  cautions: z.array(z.string()),
  /** The last image that was read from this pad in this run. */
  image: imageHandleSchema.nullable(),
  /** The map that it was read under. */
  map: mapIdSchema.nullable(),
  journal: journalSummarySchema.nullable(),
  /** Nothing new is planned until they are put aside. */
  rotted: z.array(rottedJournalSchema).readonly(),
});

/** What a confirmation is asked for: a plan, or what a journal left. */
export const writeWishSchema = z.union([
  z.strictObject({ plan: planHandleSchema }),
  z.strictObject({ finish: journalHandleSchema }),
  z.strictObject({ restore: journalHandleSchema }),
]);

/** The whole of what will be written, and the confirmation that is good for it alone: once, and not for long. */
export const writePreviewSchema = z.object({
  token: z.string(),
  /** Alike for two previews where the memory, its map and the pad's unit are, but for what changes by itself. */
  memory: z.string(),
  expiresInSeconds: z.number(),
  changes: z.array(changeSchema).readonly(),
  /** Blocks in the order in which they are written; the validity marker stands last. */
  blocks: z.array(z.object({ offset: z.number(), bytes: z.number() })).readonly(),
  /** Each is confirmed by itself. */
  asks: z.array(askSchema).readonly(),
  cautions: z.array(z.string()),
});

/** A stretch that is not as it was and not as planned, or of which that is not known. */
export const differingSchema = z.object({
  offset: z.number(),
  before: z.string(),
  /** As planned. */
  after: z.string(),
  /** As read last; null where it could not be read. */
  now: z.string().nullable(),
  means: z.string().nullable(),
});

export const memorySteps = ['identify', 'read', 'keep', 'journal', 'write', 'compare', 'rollBack', 'over'] as const;

/** Sent whenever it changes, at most 20 times a second. */
export const memoryStateSchema = z.object({
  pad: padHandleSchema,
  doing: z.enum(['read', 'write', 'finish', 'restore', 'show']),
  step: z.enum(memorySteps),
  /** What happens now, in plain words. */
  says: z.string(),
  /** Commands done and all that are to be done, this far known. */
  done: z.number(),
  of: z.number(),
  secondsLeft: z.number().nullable(),
  /** Commands that had to be sent once more. */
  retries: z.number(),
  /** Bytes may be under way to the pad: the window stays open, the machine awake. */
  writing: z.boolean(),
  /**
   * Null while it runs. `read`: the image was read and kept. Of a write: `before`, `after`, or `differs` with the bytes. Of
   * what a journal left: the same three.
   */
  end: z.enum(['read', 'before', 'after', 'differs', 'failed']).nullable(),
  /** The image that was read, once it is kept. */
  image: imageHandleSchema.nullable(),
  bytes: z.array(differingSchema).readonly(),
  problem: problemSchema.nullable(),
});
