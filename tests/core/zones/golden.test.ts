/** Published chains: every file of tests/golden/zones is a case; its source stands in it. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { parseChain } from '../../../core/zones/parse-chain.ts';
import { runStages } from '../../support/run-stages.ts';

const folder = path.resolve(import.meta.dirname, '../../golden/zones');
const pair = z.tuple([z.number(), z.number()]);
const goldenSchema = z.strictObject({
  source: z.string().min(20),
  status: z.string(),
  /** What the inputs are divided by: the count of full deflection. */
  scale: z.number().default(1),
  stages: z.array(z.unknown()),
  tolerance: z.number(),
  cases: z.array(z.strictObject({ in: pair, out: pair })).min(1),
});

const names = readdirSync(folder).filter((name) => name.endsWith('.json'));

describe('a published chain', () => {
  it('is there to be compared with', () => {
    expect(names.length).toBeGreaterThan(20);
  });

  it.each(names)('gives what its source states: %s', (name) => {
    const golden = goldenSchema.parse(JSON.parse(readFileSync(path.join(folder, name), 'utf8')));
    const chain = parseChain({ kind: 'stickwright-chain', version: 1, name, stages: golden.stages });
    if (!chain.ok) throw new Error(chain.problem.says);
    for (const one of golden.cases) {
      const out = runStages(chain.value.stages, one.in[0] / golden.scale, one.in[1] / golden.scale);
      expect(Math.abs(out.x - one.out[0]), `x at ${one.in.join(', ')}`).toBeLessThanOrEqual(golden.tolerance);
      expect(Math.abs(out.y - one.out[1]), `y at ${one.in.join(', ')}`).toBeLessThanOrEqual(golden.tolerance);
    }
  });
});
