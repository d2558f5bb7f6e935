/** The memory-map file, read from its parsed JSON; a refusal names the place. */
import { z } from 'zod';
import { readSchema } from '../read-schema.ts';
import { done, failed, type Problem, type Result } from '../result.ts';
import { checksumKinds, type ChecksumKind } from './checksum.ts';
import { overlap, regionsOf, type Region } from './map-regions.ts';
import type { MemoryMap } from './memory-map.ts';
import { settleOrder } from './settle-order.ts';

const offset = z.number().int().min(0);
const length = z.number().int().min(1);
const hex = z.string().regex(/^(?:[0-9a-f]{2})+$/u, 'must be pairs of hex digits in lower case');
const range = z.strictObject({ offset, length });
const span = z.enum(['above', 'centre', 'below']);
const axes = z.literal('yx').exactOptional();

export const codecSchema = z.union([
  z.strictObject({
    form: z.literal('packed12'),
    order: z
      .tuple([span, span, span])
      .refine((order) => new Set(order).size === 3, 'must name each of the three once')
      .readonly(),
    axes,
  }),
  z.strictObject({
    form: z.literal('words'),
    bits: z.union([z.literal(8), z.literal(10), z.literal(12), z.literal(16)]),
    endian: z.enum(['little', 'big']),
    values: z.enum(['minCentreMax', 'centreAndSpans', 'centreAboveBelow']),
    axes,
  }),
]);

const placeSchema = z.strictObject({ offset, codec: codecSchema });

const layerSchema = z.strictObject({
  marker: z
    .strictObject({ offset, valid: hex, empty: hex.nullable() })
    .refine(({ valid, empty }) => empty === null || empty.length === valid.length, 'has two forms of different length')
    .refine(({ valid, empty }) => valid !== empty, 'has one form for valid and empty, so that nothing tells them apart')
    .nullable(),
  checksum: z
    .strictObject({
      kind: z.enum(checksumKinds as [ChecksumKind, ...ChecksumKind[]]),
      offset,
      endian: z.enum(['little', 'big']),
      covers: range,
    })
    .nullable(),
  sticks: z.strictObject({ left: placeSchema.exactOptional(), right: placeSchema.exactOptional() }),
});

const layerName = z.enum(['factory', 'user']);

export const memoryMapSchema = z.object({
  kind: z.literal('stickwright-memory-map'),
  version: z.literal(1),
  id: z.string().regex(/^[a-z0-9-]{1,60}$/u, 'must be lower-case letters, digits and dashes'),
  name: z.string().min(1).max(200),
  proof: z.enum(['proven', 'unproven']),
  size: length.max(64 * 1024 * 1024),
  fingerprint: z
    .array(z.strictObject({ offset, bytes: hex }))
    .max(16)
    .readonly(),
  layers: z.strictObject({ factory: layerSchema.exactOptional(), user: layerSchema.exactOptional() }),
  hosts: z
    .array(z.strictObject({ name: z.string().min(1).max(100), reads: z.array(layerName).min(1).readonly() }))
    .max(10)
    .readonly(),
  volatile: z.array(range).max(100).readonly(),
  plausible: z.strictObject({ bits: z.number().int().min(4).max(16), leastSpan: z.number().int().min(1) }),
  chosenFrom: z.number().int().min(2).exactOptional(),
});

/**
 * Also refused: a region beyond the image, two regions that overlap, a region or a covered byte that is volatile, a region within
 * the fingerprint (what is written must not make the memory unknown), and a checksum over itself, directly or by way of others.
 */
export function parseMemoryMap(value: unknown): Result<MemoryMap> {
  const read = readSchema(memoryMapSchema, value, 'memory-map', 'The memory map');
  if (!read.ok) return read;
  const problem = checkRegions(read.value);
  return problem === null ? done(read.value) : { ok: false, problem };
}

function checkRegions(map: MemoryMap): Problem | null {
  const regions = regionsOf(map);
  if (!regions.some(({ role }) => role === 'stick')) return refuse('it names no stick in any layer');
  for (const [index, region] of regions.entries()) {
    if (region.offset + region.length > map.size)
      return refuse(
        `${region.name} ends at ${region.offset + region.length}, beyond the ${map.size} bytes of the image`,
      );
    const other = regions.slice(index + 1).find((one) => overlap(one, region));
    if (other !== undefined)
      return refuse(`${region.name} and ${other.name} overlap at byte ${Math.max(region.offset, other.offset)}`);
    if (map.volatile.some((one) => overlap(one, region))) return refuse(`${region.name} lies in a volatile stretch`);
  }
  for (const { offset: at, bytes } of map.fingerprint) {
    const range = { offset: at, length: bytes.length / 2 };
    if (at + range.length > map.size) return refuse(`the fingerprint at ${at} ends beyond the image`);
    const inside = regions.find((region) => overlap(region, range));
    if (inside !== undefined) return refuse(`${inside.name} lies in the fingerprint at ${at}, which must never change`);
  }
  return checkChecksums(map, regions);
}

function checkChecksums(map: MemoryMap, regions: readonly Region[]): Problem | null {
  for (const own of regions.filter(({ role }) => role === 'checksum')) {
    const covers = map.layers[own.layer]?.checksum?.covers;
    if (covers === undefined) continue;
    if (covers.offset + covers.length > map.size) return refuse(`the ${own.name} covers bytes beyond the image`);
    if (overlap(own, covers)) return refuse(`the ${own.name} covers itself`);
    if (map.volatile.some((one) => overlap(one, covers)))
      return refuse(`the ${own.name} covers bytes of a volatile stretch`);
  }
  const order = settleOrder(map);
  return order.ok ? null : order.problem;
}

function refuse(why: string): Problem {
  return failed('memory-map', `The memory map cannot be used: ${why}; correct the map.`).problem;
}
