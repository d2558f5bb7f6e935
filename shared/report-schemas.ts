/** Run-time schemas of what `measure` prints (core/findings/judge-track.ts), as it crosses to the screen. */
import { z } from 'zod';
import { domainSchema } from '../core/pad/stick.ts';
import { findingIds, verdicts } from '../core/findings/finding.ts';
import { limitIds } from '../core/findings/limits.ts';
import { pairSchema, problemSchema, stageSchema, stickIdSchema, stickMappingSchema } from './schemas.ts';

const number = z.number();
const perhaps = z.number().nullable();
const mappingFromSchema = z.enum(['file', 'stored', 'range']);
const capturesSchema = z.enum(['marked', 'inferred']);
const perhapsPair = z.object({ x: perhaps, y: perhaps });
const atAngle = z.object({ value: number, angle: number }).nullable();
const largestAndMean = z.object({ largest: number, mean: number });
const countRunSchema = z.object({ from: number, to: number });
const driftSchema = z.object({ x: number, y: number, u95: pairSchema });

export const logMeasureSchema = z.object({
  durationUs: number,
  reports: number,
  lost: perhaps,
  rateHz: perhaps,
  domain: domainSchema,
  stage: stageSchema.nullable(),
  interval: z.object({ p50Us: number, p95Us: number, p99Us: number, maxUs: number }).nullable(),
  duplicates: number,
  damaged: number,
  ended: z.boolean().nullable(),
  unread: z.object({ reports: number, says: z.string().nullable() }).nullable(),
});

const restSchema = z.object({
  releases: number,
  point: pairSchema,
  u95: perhapsPair,
  step: pairSchema,
  enclosing: z.object({ x: number, y: number, radius: number }),
  covariance: z.object({ xx: number, xy: number, yy: number }).nullable(),
  noise: perhapsPair.nullable(),
  noiseBelowStep: z.object({ x: z.boolean(), y: z.boolean() }).nullable(),
  peakToPeak: pairSchema,
  hysteresis: perhapsPair,
  drift: driftSchema.nullable(),
  offset: z.object({ x: number, y: number, magnitude: number, largest: number }),
  toleranceRadius: perhaps,
});

const directionSchema = z.object({
  angle: number,
  x: perhaps,
  y: perhaps,
  reach: perhaps,
  seen: perhaps,
  outputAngle: perhaps,
  spread: perhaps,
  state: z.enum(['covered', 'thin', 'none']),
  covered: z.boolean(),
  atLimit: z.boolean(),
});

const rimSchema = z.object({
  turns: z.object({ clockwise: number, counterClockwise: number }),
  directions: z.array(directionSchema),
  leastReach: atAngle,
  overreach: atAngle,
  meanRadialError: perhaps,
  rmsRadialError: perhaps,
  fullReachShare: perhaps,
  atLimitShare: perhaps,
  pooledSpread: perhaps,
  pooledDegrees: number,
  directionHysteresis: perhaps,
  turnErrors: z.object({ hysteresis: number, repeatability: number }).nullable(),
  headroom: z.object({ xMin: number, xMax: number, yMin: number, yMax: number }).nullable(),
  circle: z.object({ x: number, y: number, radius: number }).nullable(),
  ellipse: z.object({ x: number, y: number, a: number, b: number, angle: number }).nullable(),
  skew: perhaps,
  roundness: z
    .object({ leastSquares: number, minimumZone: number, minimumCircumscribed: number, maximumInscribed: number })
    .nullable(),
});

const axisTravelSchema = z.object({
  min: number,
  max: number,
  missing: perhaps,
  longestRun: perhaps,
  runs: z.array(countRunSchema),
  judgedShare: number,
  jumps: perhaps,
  jumpsAt: z.array(number),
  backwards: perhaps,
  backwardsAt: z.array(countRunSchema.extend({ sweeps: number })).nullable(),
  unsteady: z.array(countRunSchema.extend({ times: number })).nullable(),
  step: number,
});

const travelSchema = z.object({
  sweeps: number,
  x: axisTravelSchema.nullable(),
  y: axisTravelSchema.nullable(),
  turnAngle: perhaps,
  turnU95: perhaps,
  skewAngle: perhaps,
  skewU95: perhaps,
  seenAngle: perhapsPair,
});

const flickSchema = z.object({
  count: number,
  unread: number,
  overshoot: largestAndMean,
  overshootCounts: largestAndMean,
  settlingUs: z.object({ p50: number, max: number }),
  band: pairSchema,
  at: z.array(number),
});

const disturbanceSchema = z.object({
  of: z.string(),
  shift: pairSchema,
  u95: pairSchema.nullable(),
  startUs: number,
  endUs: number,
});
const allanSchema = z.object({
  tauUs: z.array(number),
  x: z.array(number).nullable(),
  y: z.array(number).nullable(),
});
const warmUpSchema = z.object({
  dwells: number,
  drift: driftSchema,
  last: driftSchema.nullable(),
  steady: z.boolean().nullable(),
  seconds: number,
});

const stickReportSchema = z.object({
  rest: restSchema.nullable(),
  rim: rimSchema.nullable(),
  travel: travelSchema.nullable(),
  flick: flickSchema.nullable(),
  disturbance: z.array(disturbanceSchema).nullable(),
  allan: allanSchema.nullable(),
  warmUp: warmUpSchema.nullable(),
  mapping: stickMappingSchema,
  mappingFrom: mappingFromSchema,
  captures: capturesSchema,
  lacks: z.array(problemSchema),
});

const buttonSchema = z.object({
  usage: number,
  pressed: z.boolean(),
  released: z.boolean(),
  bounceMs: perhaps,
});

const inputsSchema = z.object({
  buttons: z.array(buttonSchema),
  hat: z.array(number).nullable(),
  triggers: z.partialRecord(
    stickIdSchema,
    z.object({ min: number, max: number, back: number, fieldMinimum: number, fieldMaximum: number }),
  ),
  clicks: z.partialRecord(stickIdSchema, number),
});

const findingSchema = z.object({
  id: z.enum(findingIds),
  severity: z.enum(['note', 'caution', 'fault']),
  stick: stickIdSchema.nullable(),
  value: perhaps,
  u95: perhaps,
  unit: z.string(),
  limit: perhaps,
  limitFrom: z.enum(['published', 'common practice', 'workshop']),
  decision: z.enum(['pass', 'fail', 'cannot say']),
  says: z.string(),
  for: z.array(z.string()),
  against: z.array(z.string()),
  causes: z.array(z.string()),
  next: z.string(),
  shows: z.object({
    directions: z.array(number),
    spans: z.array(z.object({ startUs: number, endUs: number })),
    counts: z.array(countRunSchema.extend({ axis: z.enum(['x', 'y']) })),
  }),
});

export const measureReportSchema = z.object({
  kind: z.literal('stickwright-measure'),
  version: z.literal(1),
  log: logMeasureSchema,
  mappingFrom: mappingFromSchema,
  captures: capturesSchema,
  sticks: z.partialRecord(stickIdSchema, stickReportSchema),
  inputs: inputsSchema.nullable(),
  findings: z.array(findingSchema),
  verdict: z.partialRecord(stickIdSchema, z.enum(verdicts)),
  /** One sentence for each verdict. */
  verdictWhy: z.partialRecord(stickIdSchema, z.string()),
  /** The limits held against, by id, and where each value is from. */
  limits: z.record(z.enum(limitIds), z.object({ value: number, from: z.enum(['file', 'settings', 'default']) })),
});
