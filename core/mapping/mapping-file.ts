/** The mapping file: mappings of a pad's sticks, for `--mapping` and from `propose --out`. */
import { z } from 'zod';
import { ownerSchema, type PadOwner } from '../pad/owner.ts';
import { domainSchema, type Domain } from '../pad/stick.ts';
import { STICKS } from '../pad/stick.ts';
import { readSchema } from '../read-schema.ts';
import { done, failed, type Result } from '../result.ts';
import { checkMapping } from './check-mapping.ts';
import type { PadMapping, StickMapping } from './mapping.ts';

export interface MappingFile {
  /** The pad it was made for; null where the file does not say. */
  readonly pad: PadOwner | null;
  /** What its counts mean; null where the file does not say. */
  readonly domain: Domain | null;
  /** What its maker called it; missing where the file does not say. */
  readonly name?: string;
  /** At least one stick; the counts of y are as reported. */
  readonly sticks: PadMapping;
}

const axisSchema = z.object({ min: z.number(), centre: z.number(), max: z.number() });
export const stickMappingSchema = z.object({ x: axisSchema, y: axisSchema });

const fileSchema = z.object({
  kind: z.literal('stickwright-mapping'),
  version: z.literal(1),
  name: z.string().nullish(),
  pad: ownerSchema.nullish(),
  domain: domainSchema.nullish(),
  sticks: z.object({ left: stickMappingSchema.optional(), right: stickMappingSchema.optional() }),
});

/** Takes the parsed JSON. Refuses other kinds and versions, what is missing, and mappings that `checkMapping` refuses. */
export function parseMappingFile(value: unknown): Result<MappingFile> {
  const read = readSchema(fileSchema, value, 'mapping-file', 'The mapping file');
  if (!read.ok) return read;
  const { left, right } = read.value.sticks;
  const sticks: PadMapping = { ...(left && { left }), ...(right && { right }) };
  if (left === undefined && right === undefined)
    return failed('mapping-file', 'The mapping file holds no stick; give sticks.left, sticks.right or both.');
  for (const stick of STICKS) {
    const mapping = sticks[stick];
    const problem = mapping === undefined ? null : checkMapping(mapping);
    if (problem !== null) return failed(problem.code, `The mapping file, ${stick} stick: ${problem.says}`);
  }
  const { pad, domain, name } = read.value;
  return done({ pad: pad ?? null, domain: domain ?? null, ...(typeof name === 'string' && { name }), sticks });
}

/** The text of a mapping file, ending in a newline; `parseMappingFile` reads it back. */
export function formatMappingFile(file: MappingFile): string {
  const { left, right } = file.sticks;
  const sticks = { ...(left && { left: plain(left) }), ...(right && { right: plain(right) }) };
  const whole = {
    kind: 'stickwright-mapping',
    version: 1,
    ...(file.name !== undefined && { name: file.name }),
    pad: file.pad,
    ...(file.domain !== null && { domain: file.domain }),
    sticks,
  };
  return `${JSON.stringify(whole, null, 2)}\n`;
}

/** Without keys that a caller's object may carry beyond the format's. */
function plain(mapping: StickMapping): StickMapping {
  const { x, y } = mapping;
  return { x: { min: x.min, centre: x.centre, max: x.max }, y: { min: y.min, centre: y.centre, max: y.max } };
}
