/** What a guided survey is asked to take, and where it stands while it does. */
import { z } from 'zod';
import { disturbances } from '../core/capture/evidence/disturbance.ts';
import {
  padHandleSchema,
  pairSchema,
  problemSchema,
  stageSchema,
  stickIdSchema,
  surveyHandleSchema,
} from './schemas.ts';

/** What a capture of a survey is for. Warm-up is a series of releases beside the captures. */
export const surveyPurposes = ['warmUp', 'rest', 'rim', 'travel', 'flick', 'disturbance', 'inputs'] as const;
const purposeSchema = z.enum(surveyPurposes);
const disturbanceSchema = z.enum(disturbances);

export const surveyRequestSchema = z
  .object({
    pad: padHandleSchema,
    stage: stageSchema.nullable(),
    /** None where the inputs alone are wanted. */
    sticks: z.array(stickIdSchema).max(2),
    steps: z.array(purposeSchema).min(1).max(surveyPurposes.length).default(['rest', 'rim', 'travel', 'flick']),
    disturbances: z
      .array(disturbanceSchema)
      .max(disturbances.length)
      .default([...disturbances]),
    releases: z.number().int().min(1).max(200),
    turns: z.number().int().min(1).max(20),
    /** Toward each of the four directions; null: as many as the stick's counts and the report rate need. */
    sweeps: z.number().int().min(1).max(10).nullable().default(null),
    flicks: z.number().int().min(1).max(10).default(2),
    confirmButton: z.number().int().min(1).max(128).nullable(),
  })
  .refine(({ sticks, steps }) => sticks.length > 0 || steps.every((step) => step === 'inputs'), {
    message: 'names no stick, and only the inputs can be taken without one',
  });

const tally = z.object({ taken: z.number(), asked: z.number() });
/** Degrees counter-clockwise from +x. */
const directions = z.array(z.number());

/** One control of the pad: what was seen of it and what is missing. */
const inputStateSchema = z.object({
  says: z.string(),
  down: z.boolean(),
  pressed: z.boolean(),
  released: z.boolean(),
  /** Longest bounce; null for a trigger and before the first press. */
  bounceMs: z.number().nullable(),
  /** Raw counts that a trigger was seen between, and the limits of its field. */
  extent: z.object({ least: z.number(), greatest: z.number() }).nullable(),
  field: z.object({ minimum: z.number(), maximum: z.number() }).nullable(),
  missing: z.string().nullable(),
});

const captureStateSchema = z.object({
  /** Null for the inputs, which are the pad's. */
  stick: stickIdSchema.nullable(),
  purpose: purposeSchema,
  /** What a disturbance is. */
  of: disturbanceSchema.nullable(),
  state: z.enum(['open', 'taken', 'skipped']),
});

/** Where a guided survey stands; sent whenever it changes, at most 20 times a second. */
export const surveyStateSchema = z.object({
  survey: surveyHandleSchema,
  pad: padHandleSchema,
  stage: stageSchema.nullable(),
  stick: stickIdSchema.nullable(),
  step: z.enum(['ready', ...surveyPurposes, 'done', 'aborted', 'failed']),
  /** What the hand is asked to do now, in plain words. */
  prompt: z.string(),
  /** Changes with every new thing asked, so that sound and speech follow. */
  promptNumber: z.number(),
  /** Direction the stick is to be pushed or led toward; null otherwise. */
  toward: z.number().nullable(),
  phase: z.enum(['waiting', 'pushing', 'settling', 'dwelling', 'turning', 'standing', 'sweeping', 'paused']),
  /** Releases of a rest, or dwells under a disturbance. */
  releases: tally,
  turns: z.object({
    clockwise: z.number(),
    counterClockwise: z.number(),
    asked: z.number(),
    /** Degrees of the turn under way, signed, counter-clockwise positive. */
    underway: z.number(),
  }),
  /** Turns that covered each of the 72 directions: clockwise and counter-clockwise. */
  covered: z.array(z.object({ clockwise: z.number(), counterClockwise: z.number() })),
  /** Names of stretches that are not covered, e.g. "265°–280°". */
  uncovered: z.array(z.string()),
  /** Rest points of the stick taken so far, raw counts, each with the direction that its push was asked for. */
  rests: z.array(pairSchema.extend({ toward: z.number() })),
  sweeps: z.object({
    taken: directions,
    asked: z.number(),
    /** Place of the sweep under way: −1 at the gate that it starts from, 1 at the one it goes to; null without one. */
    along: z.number().nullable(),
  }),
  flicks: z.object({ taken: directions, asked: z.number() }),
  /** Drift in counts a second, y up; null while it cannot be told. */
  warmUp: z.object({ dwells: z.number(), drift: pairSchema.nullable(), steady: z.boolean().nullable() }).nullable(),
  /** Every control of the pad; null outside of the inputs. */
  inputs: z.array(inputStateSchema).nullable(),
  captures: z.array(captureStateSchema),
  /** Index of the capture that is next or under way; null once all are over. */
  current: z.number().nullable(),
  /** The button that confirms, where the survey is run hands-free. */
  confirmButton: z.number().nullable(),
  problem: problemSchema.nullable(),
});
