/** Run-time schema of a stick's evidence (core/capture/evidence/evidence.ts), which the screen computes measures and predictions from. */
import { z } from 'zod';
import { pairSchema, problemSchema } from './schemas.ts';

const axisFieldSchema = z.object({
  minimum: z.number(),
  maximum: z.number(),
  up: z.union([z.literal(1), z.literal(-1)]),
});

const dwellSchema = z.object({
  startUs: z.number(),
  endUs: z.number(),
  point: pairSchema,
  reports: z.number(),
  variance: pairSchema.nullable(),
  least: pairSchema,
  greatest: pairSchema,
  from: pairSchema.nullable(),
  readings: z.array(z.number()),
});

const shapeSchema = z.object({
  circle: z.object({ x: z.number(), y: z.number(), radius: z.number() }).nullable(),
  ellipse: z.object({ x: z.number(), y: z.number(), a: z.number(), b: z.number(), angle: z.number() }).nullable(),
  roundness: z
    .object({
      leastSquares: z.number(),
      minimumZone: z.number(),
      minimumCircumscribed: z.number(),
      maximumInscribed: z.number(),
    })
    .nullable(),
});

const turnSchema = z.object({
  way: z.enum(['clockwise', 'counterClockwise']),
  startUs: z.number(),
  endUs: z.number(),
  points: z.array(pairSchema.nullable()),
  extremes: z.object({ xMin: z.number(), xMax: z.number(), yMin: z.number(), yMax: z.number() }),
});

export const stickEvidenceSchema = z.object({
  fields: z.object({ x: axisFieldSchema, y: axisFieldSchema }),
  rest: z
    .object({
      dwells: z.array(dwellSchema),
      odd: z.array(z.object({ number: z.number(), dwell: dwellSchema })).exactOptional(),
      unpushed: z.array(z.object({ number: z.number(), dwell: dwellSchema })).exactOptional(),
    })
    .nullable(),
  rim: z
    .object({
      about: pairSchema,
      turns: z.array(turnSchema),
      parts: z.array(turnSchema).exactOptional(),
      shape: shapeSchema,
      trace: z.array(z.number()),
    })
    .nullable(),
  captures: z.enum(['marked', 'inferred']),
  /** The effective step of the counts; 1 where it is not stated. */
  step: pairSchema.exactOptional(),
  /** Where an untouched stick stood, in a log without marks. */
  still: z.array(dwellSchema).exactOptional(),
  /** Releases that a statement on the scatter of the rest takes; 12 where it is not stated. */
  releasesNeeded: z.number().exactOptional(),
  /** Why rest or rim is null, and what to do. */
  lacks: z.array(problemSchema).exactOptional(),
});
