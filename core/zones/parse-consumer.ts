/** The consumer file, read from its parsed JSON; a refusal names the chain, the stage and the place in it. */
import { z } from 'zod';
import { readSchema } from '../read-schema.ts';
import { done, type Result } from '../result.ts';
import type { Stage } from './chain.ts';
import type { Consumer, ConsumerControl } from './consumer.ts';
import { parseStages } from './parse-chain.ts';

const CONTROLS: readonly ConsumerControl[] = ['left', 'right', 'trigger'];

const chainSchema = z.object({ stages: z.array(z.unknown()).max(100) });

const consumerSchema = z.object({
  kind: z.literal('stickwright-consumer'),
  version: z.literal(1),
  name: z.string().min(1).max(200),
  takes: z.enum(['pad', 'driver']),
  chains: z.object({
    left: chainSchema.optional(),
    right: chainSchema.optional(),
    trigger: chainSchema.optional(),
  }),
  needs: z.number().gt(0).max(1.5).nullish(),
  source: z.string().max(500).nullish(),
});

/** Unknown keys are passed over outside of the stages; in a stage they are refused. */
export function parseConsumer(value: unknown): Result<Consumer> {
  const read = readSchema(consumerSchema, value, 'consumer-file', 'The consumer file');
  if (!read.ok) return read;
  const { name, takes, needs, source } = read.value;
  const chains: Partial<Record<ConsumerControl, { stages: readonly Stage[] }>> = {};
  for (const control of CONTROLS) {
    const chain = read.value.chains[control];
    if (chain === undefined) continue;
    const stages = parseStages(
      chain.stages,
      `chain for ${control === 'trigger' ? 'a trigger' : `the ${control} stick`}`,
    );
    if (!stages.ok) return stages;
    chains[control] = { stages: stages.value };
  }
  return done({
    kind: 'stickwright-consumer',
    version: 1,
    name,
    takes,
    chains,
    needs: needs ?? null,
    source: source ?? null,
  });
}
