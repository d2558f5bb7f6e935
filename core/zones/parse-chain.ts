/** The chain file, read from its parsed JSON; a refusal names the stage and the place in it. */
import { z } from 'zod';
import { readSchema } from '../read-schema.ts';
import { done, failed, type Result } from '../result.ts';
import type { Chain, Stage } from './chain.ts';
import { axialSchema } from './stages/axial.ts';
import { curveSchema } from './stages/curve.ts';
import { digitalSchema } from './stages/digital.ts';
import { limitSchema } from './stages/limit.ts';
import { minimumOutputSchema } from './stages/minimum-output.ts';
import { quantiseSchema } from './stages/quantise.ts';
import { radialSchema } from './stages/radial.ts';
import { scaledRadialSchema } from './stages/scaled-radial.ts';
import { sectorSchema } from './stages/sector.ts';
import { shapeSchema } from './stages/shape.ts';
import { slopedAxialSchema } from './stages/sloped-axial.ts';

const zones = new Map<string, z.ZodType<Stage>>([
  ['axial', axialSchema],
  ['radial', radialSchema],
  ['scaledRadial', scaledRadialSchema],
  ['sector', sectorSchema],
  ['slopedAxial', slopedAxialSchema],
]);

const others = new Map<string, z.ZodType<Stage>>([
  ['minimumOutput', minimumOutputSchema],
  ['curve', curveSchema],
  ['limit', limitSchema],
  ['shape', shapeSchema],
  ['quantise', quantiseSchema],
  ['digital', digitalSchema],
]);

const chainSchema = z.object({
  kind: z.literal('stickwright-chain'),
  version: z.literal(1),
  name: z.string(),
  stages: z.array(z.unknown()).max(100),
  needs: z.number().gt(0).max(1.5).nullish(),
});

/** Unknown keys beside the stages are passed over; in a stage they are refused, since a misspelt edge would change the answer. */
export function parseChain(value: unknown): Result<Chain> {
  const read = readSchema(chainSchema, value, 'chain-file', 'The chain file');
  if (!read.ok) return read;
  const stages = parseStages(read.value.stages, 'chain');
  if (!stages.ok) return stages;
  const { name, needs } = read.value;
  return done({ kind: 'stickwright-chain', version: 1, name, stages: stages.value, needs: needs ?? null });
}

/** The stages of one chain, in order; `what` names the chain as a refusal speaks of it. */
export function parseStages(values: readonly unknown[], what: string): Result<Stage[]> {
  const stages: Stage[] = [];
  for (const [index, one] of values.entries()) {
    const stage = parseStage(one, `Stage ${index + 1} of the ${what}`);
    if (!stage.ok) return stage;
    stages.push(stage.value);
  }
  return done(stages);
}

function parseStage(value: unknown, place: string): Result<Stage> {
  if (typeof value !== 'object' || value === null)
    return failed(
      'chain-stage',
      `${place} is not an object; write it as {"zone":"radial","inner":0.1} or another stage.`,
    );
  if ('zone' in value) {
    const schema = typeof value.zone === 'string' ? zones.get(value.zone) : undefined;
    if (schema !== undefined) return readSchema(schema, value, 'chain-stage', `${place} (${String(value.zone)})`);
    const known = [...zones.keys()].join(', ');
    return failed(
      'chain-stage-unknown',
      `${place} names the unknown zone ${JSON.stringify(value.zone)}; known are ${known}.`,
    );
  }
  const name = Object.keys(value).find((key) => others.has(key));
  const schema = name === undefined ? undefined : others.get(name);
  if (name !== undefined && schema !== undefined) return readSchema(schema, value, 'chain-stage', `${place} (${name})`);
  const keys = Object.keys(value).join(', ');
  const known = ['zone', ...others.keys()].join(', ');
  return failed('chain-stage-unknown', `${place} is unknown (its keys: ${keys}); a stage has one of ${known}.`);
}
