/** Run-time schemas of memory images, maps and plans as the bench gives them to the screen. */
import { z } from 'zod';
import { domainSchema } from '../core/pad/stick.ts';
import { askCodes } from '../core/image/ask.ts';
import { ownerSchema } from '../core/pad/owner.ts';
import { codecSchema, memoryMapSchema } from '../core/image/parse-memory-map.ts';
import { journalHandleSchema, stickIdSchema, stickMappingSchema, surveyHandleSchema } from './schemas.ts';

/** A kept image by the SHA-256 of its bytes. */
export const imageHandleSchema = z.string().regex(/^[0-9a-f]{64}$/u);
export const mapIdSchema = z.string().min(1).max(60);
export const planHandleSchema = z.string().min(1).max(64);
export const layerNameSchema = z.enum(['factory', 'user']);

export const imageSummarySchema = z.object({
  image: imageHandleSchema,
  size: z.number(),
  /** When and why it was kept, newest first; `pad` is the one that it was read from, or made for. */
  kept: z.array(
    z.object({
      at: z.string(),
      why: z.string(),
      map: z.string().nullable(),
      pad: ownerSchema.extend({ product: z.string() }).nullable(),
    }),
  ),
});

export const mapSummarySchema = z.object({
  map: memoryMapSchema,
  /** Comes with the program: the map of a simulated pad. */
  bundled: z.boolean(),
});

export const mapListSchema = z.object({
  maps: z.array(mapSummarySchema),
  /** Own files that are not used, each with its fault. */
  problems: z.array(z.object({ file: z.string(), says: z.string() })),
});

const storedStickSchema = z.object({
  stick: stickIdSchema,
  offset: z.number(),
  bytes: z.string(),
  mapping: stickMappingSchema.nullable(),
  implausible: z.string().nullable(),
});

const decodedLayerSchema = z.object({
  layer: layerNameSchema,
  marker: z.enum(['valid', 'empty', 'other', 'none']),
  checksum: z.object({ stored: z.string(), computed: z.string(), good: z.boolean() }).nullable(),
  sticks: z.array(storedStickSchema).readonly(),
});

/** An image under a map: what its layers hold and which host reads what. */
export const imageDetailsSchema = z.object({
  image: imageHandleSchema,
  size: z.number(),
  map: z.object({ id: mapIdSchema, name: z.string(), proof: z.enum(['proven', 'unproven']) }),
  /** Ids of all maps whose size and fingerprint fit. */
  fitting: z.array(mapIdSchema),
  layers: z.array(decodedLayerSchema).readonly(),
  hosts: z
    .array(
      z.object({
        host: z.string(),
        layer: layerNameSchema.nullable(),
        sticks: z.partialRecord(stickIdSchema, stickMappingSchema),
      }),
    )
    .readonly(),
});

export const changeSchema = z.object({ offset: z.number(), old: z.string(), new: z.string(), means: z.string() });

/** What is confirmed by itself before it is written, one plain sentence each. */
export const askCodeSchema = z.enum(askCodes);
export const askSchema = z.object({ code: askCodeSchema, says: z.string() });

/** Where numbers are from: a survey, a mapping kept under a name, or a file with what it says of its pad. */
export const numbersFromSchema = z.union([
  z.strictObject({ survey: surveyHandleSchema }),
  z.strictObject({ kept: z.string().min(1).max(80) }),
  z.strictObject({ file: ownerSchema.nullable(), domain: domainSchema.nullable() }),
]);

/**
 * What to plan for an image. `restore` brings another kept image back: its mapped places alone, or the whole of it. `undo` brings
 * back the whole of what stood before a write that ended, by its journal.
 */
export const planWishSchema = z.union([
  z.strictObject({
    carry: z.strictObject({
      from: layerNameSchema,
      to: layerNameSchema,
      sticks: z.array(stickIdSchema).min(1).max(2).readonly(),
    }),
  }),
  z.strictObject({
    store: z.strictObject({
      layer: layerNameSchema,
      mappings: z.partialRecord(stickIdSchema, stickMappingSchema),
      /** Of all of these numbers; where they are from several, of the one that is known least. */
      from: numbersFromSchema,
    }),
  }),
  z.strictObject({ restore: z.strictObject({ image: imageHandleSchema, scope: z.enum(['calibration', 'whole']) }) }),
  z.strictObject({ undo: journalHandleSchema }),
]);

/** A plan is bound to one image; it is a patch file when it is saved. */
export const planSchema = z.object({
  plan: planHandleSchema,
  image: imageHandleSchema,
  map: mapIdSchema,
  /** Bytes that really change. */
  bytes: z.number(),
  changes: z.array(changeSchema).readonly(),
  /** What would be asked before it is written to the pad that the image is of. */
  asks: z.array(askSchema).readonly(),
  /** The patch file's text, for saving. */
  patch: z.string(),
});

export const imageComparisonSchema = z.object({
  sameSize: z.boolean(),
  runs: z
    .array(
      z.object({
        offset: z.number(),
        old: z.string(),
        new: z.string(),
        means: z.string().nullable(),
        volatile: z.boolean(),
      }),
    )
    .readonly(),
});

const foundStickSchema = z.object({
  stick: stickIdSchema,
  codec: codecSchema,
  offset: z.number(),
  mapping: stickMappingSchema,
  /** Largest difference of one of the six numbers from the measured one, counts. */
  furthest: z.number(),
});

/** Where a calibration may stand, the least likely to be chance first. */
export const foundPlaceSchema = z.object({
  /** Ways to take its bytes that fit about equally well, the nearest first. */
  readings: z
    .array(
      z.object({
        sticks: z.partialRecord(stickIdSchema, foundStickSchema),
        /** Bytes from the left stick to the right one. */
        distance: z.number().nullable(),
      }),
    )
    .readonly(),
  /** What tells which of several readings is right. */
  decides: z.string().nullable(),
  /** Offsets of other places that read alike. */
  again: z.array(z.number()).readonly(),
  /** How often chance alone would find a place that fits as well in this image. */
  chance: z.number(),
});

export const placesSchema = z.object({
  measured: z.partialRecord(stickIdSchema, stickMappingSchema),
  places: z.array(foundPlaceSchema).readonly(),
});

const placeSchema = z.strictObject({ offset: z.number().int().min(0), codec: codecSchema });
const placesOfLayer = z.partialRecord(stickIdSchema, placeSchema);

/** A map made of places that were found; it is `unproven`. */
export const mapWishSchema = z.object({
  image: imageHandleSchema,
  id: z.string().regex(/^[a-z0-9-]{1,60}$/u),
  name: z.string().min(1).max(200),
  layers: z.partialRecord(layerNameSchema, placesOfLayer),
  /** Out of how many equal readings each layer was chosen. */
  readings: z.partialRecord(layerNameSchema, z.number().int().min(1)),
});
