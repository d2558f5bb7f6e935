/** The calls and events around memory images, maps and the memory of a pad. */
import { z } from 'zod';
import {
  askCodeSchema,
  imageComparisonSchema,
  imageDetailsSchema,
  imageHandleSchema,
  imageSummarySchema,
  mapIdSchema,
  mapListSchema,
  mapSummarySchema,
  mapWishSchema,
  placesSchema,
  planHandleSchema,
  planSchema,
  planWishSchema,
} from './image-schemas.ts';
import {
  allJournalsSchema,
  journalSummarySchema,
  memoryAboutSchema,
  memoryStateSchema,
  writePreviewSchema,
  writeWishSchema,
} from './memory-state.ts';
import {
  journalHandleSchema,
  padHandleSchema,
  stickIdSchema,
  stickMappingSchema,
  surveyHandleSchema,
} from './schemas.ts';

const nothing = z.object({});
const onePad = z.object({ pad: padHandleSchema });

export const memoryCalls = {
  /** Every kept image, the one kept last first. */
  'images.list': { request: nothing, reply: z.array(imageSummarySchema) },
  /** An image file's contents in pieces of at most 512 KiB, base64; the last piece answers with the image. */
  'images.import': {
    request: z.object({
      upload: z.string().min(1).max(64),
      name: z.string().max(200),
      piece: z.string().max(700_000),
      last: z.boolean(),
    }),
    reply: z.object({ image: imageSummarySchema.nullable() }),
  },
  /** An image in pieces, base64; `next` is null after the last. */
  'images.export': {
    request: z.object({ image: imageHandleSchema, from: z.number().int().min(0) }),
    reply: z.object({ piece: z.string(), next: z.number().nullable() }),
  },
  /** Decoded under a map; under the one that fits where `map` is null. */
  'images.open': {
    request: z.object({ image: imageHandleSchema, map: mapIdSchema.nullable() }),
    reply: imageDetailsSchema,
  },
  'images.compare': {
    request: z.object({ first: imageHandleSchema, second: imageHandleSchema, map: mapIdSchema.nullable() }),
    reply: imageComparisonSchema,
  },
  'images.plan': {
    request: z.object({
      image: imageHandleSchema,
      map: mapIdSchema,
      wish: planWishSchema,
      /** `wrong-checksum`: plan although a stored checksum is wrong already. */
      accepts: z.array(askCodeSchema).max(3).readonly().exactOptional(),
    }),
    reply: planSchema,
  },
  /** A patch file's text as a plan. */
  'images.readPatch': { request: z.object({ text: z.string().max(1_000_000) }), reply: planSchema },
  /** A new kept image; the old one stays as it is. */
  'images.apply': { request: z.object({ plan: planHandleSchema }), reply: imageSummarySchema },
  /** Where the image may hold the calibration that was measured in a survey or typed in. */
  'images.find': {
    request: z.object({
      image: imageHandleSchema,
      by: z.union([
        z.strictObject({ survey: surveyHandleSchema }),
        z.strictObject({ values: z.partialRecord(stickIdSchema, stickMappingSchema) }),
      ]),
    }),
    reply: placesSchema,
  },
  'maps.list': { request: nothing, reply: mapListSchema },
  /** A map file's text. */
  'maps.add': { request: z.object({ text: z.string().max(200_000) }), reply: mapSummarySchema },
  /** Makes a map of places that were found; it is `unproven`. */
  'maps.save': { request: mapWishSchema, reply: mapSummarySchema },
  /** The technician says that a survey taken after a write agreed with what was written: the map is then `proven`. */
  'maps.prove': { request: z.object({ map: mapIdSchema, survey: surveyHandleSchema }), reply: mapSummarySchema },

  /** What can be done with this pad's memory; the pad must be open. */
  'memory.about': { request: onePad, reply: memoryAboutSchema },
  /** Switches writing on or off for this pad. */
  'memory.allow': { request: onePad.extend({ writing: z.boolean() }), reply: memoryAboutSchema },
  /** Identifies the pad, reads its whole memory twice and keeps the image. Answers at once; `memory.state` tells the rest. */
  'memory.read': { request: onePad, reply: memoryStateSchema },
  /** What would be written, with the confirmation for it. */
  'memory.preview': { request: onePad.extend({ wish: writeWishSchema }), reply: writePreviewSchema },
  /** Writes what the confirmation stands for, once everything that it asks is among `accepts`. Answers at once; `memory.state` tells the rest. */
  'memory.write': {
    request: onePad.extend({
      token: z.string().max(64),
      accepts: z.array(askCodeSchema).max(3).readonly().exactOptional(),
    }),
    reply: memoryStateSchema,
  },
  /** Ends a session; a write that was begun is rolled back. */
  'memory.abort': { request: onePad, reply: memoryStateSchema },
  /** Reads the pad and tells what a journal's write left: before, after, or which bytes differ. */
  'memory.show': { request: onePad.extend({ journal: journalHandleSchema }), reply: memoryStateSchema },
  /** The last known state of a session of this pad; null where there was none in this run. */
  'memory.latest': { request: onePad, reply: z.object({ state: memoryStateSchema.nullable() }) },
  /** Writes whose end is not known. */
  'journals.list': { request: nothing, reply: z.array(journalSummarySchema) },
  'journals.all': { request: nothing, reply: allJournalsSchema },
  /** Puts a journal out of the way, e.g. of a pad that is lost; the file stays. */
  'journals.dismiss': { request: z.object({ journal: journalHandleSchema }), reply: z.array(journalSummarySchema) },
} as const;

export const memoryEvents = {
  'images.changed': z.array(imageSummarySchema),
  'maps.changed': mapListSchema,
  'memory.state': memoryStateSchema,
  'journals.changed': z.array(journalSummarySchema),
} as const;
