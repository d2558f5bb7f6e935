/** The memory-protocol file, read from its parsed JSON; a refusal names the place. */
import { z } from 'zod';
import { readSchema } from '../read-schema.ts';
import { done, failed, type Problem, type Result } from '../result.ts';
import { checksumKinds, checksumLength, type ChecksumKind } from './checksum.ts';
import { overlap } from './map-regions.ts';
import type { ByteRange } from './memory-map.ts';
import type { CommandPlaces, MemoryProtocol, ReplyPlaces } from './memory-protocol.ts';

const byte = z.number().int().min(0).max(255);
const offset = z.number().int().min(0).max(4095);
const length = z.number().int().min(1).max(4096);
const id = z.string().regex(/^[a-z0-9-]{1,60}$/u, 'must be lower-case letters, digits and dashes');
const hex = z.string().regex(/^(?:[0-9a-f]{2})+$/u, 'must be pairs of hex digits in lower case');
const endian = z.enum(['little', 'big']);
const range = z.strictObject({ offset, length });
const numberPlace = z.strictObject({ offset, length: z.number().int().min(1).max(4), endian });
const fixedBytes = { offset, bytes: hex };
const millis = z.number().int().min(0).max(60_000);
const connections = z.array(z.enum(['usb', 'bluetooth', 'simulated'])).readonly();
const numbers = z.array(byte).max(256).readonly();

const checksum = z
  .strictObject({ kind: z.enum(checksumKinds as [ChecksumKind, ...ChecksumKind[]]), offset, endian, covers: range })
  .nullable();

const report = { reportId: byte, byteLength: length, sequence: offset.nullable(), data: offset, checksum };

const protocolSchema = z.object({
  kind: z.literal('stickwright-memory-protocol'),
  version: z.literal(1),
  id,
  name: z.string().min(1).max(200),
  pads: z
    .array(z.strictObject({ vendorId: z.number().int().min(0), productId: z.number().int().min(0) }))
    .min(1)
    .readonly(),
  reads: connections,
  writes: connections,
  command: z.strictObject({ ...report, code: offset, address: numberPlace, length: numberPlace }),
  reply: z.strictObject({
    ...report,
    holds: z.array(z.strictObject(fixedBytes)).max(16).readonly(),
    code: z.strictObject({ offset, plus: byte }),
    address: numberPlace.nullable(),
    length: numberPlace.nullable(),
    status: z.strictObject({ offset, good: numbers, again: numbers }),
  }),
  identify: z.strictObject({
    code: byte,
    kinds: z
      .array(z.strictObject({ ...fixedBytes, map: id }))
      .min(1)
      .readonly(),
    unit: range.nullable(),
  }),
  read: z.strictObject({ code: byte, block: length }),
  write: z.strictObject({ code: byte, block: length, page: length.nullable() }),
  battery: z.strictObject({ code: byte, offset, least: z.number().min(0).max(100) }).nullable(),
  spacingMillis: millis,
  timeoutMillis: z.strictObject({ read: millis.min(1), write: millis.min(1) }),
  settleMillis: millis,
  retries: z.number().int().min(0).max(10),
});

interface Place extends ByteRange {
  readonly name: string;
}

/** Also refused: a place beyond its report, two places that overlap, a block that the reports cannot hold. */
export function parseMemoryProtocol(value: unknown): Result<MemoryProtocol> {
  const read = readSchema(protocolSchema, value, 'memory-protocol', 'The memory protocol');
  if (!read.ok) return read;
  const problem = checkPlaces(read.value);
  return problem === null ? done(read.value) : { ok: false, problem };
}

function checkPlaces({ command, reply, read, write, identify, battery }: MemoryProtocol): Problem | null {
  const sides: readonly (readonly [string, CommandPlaces | ReplyPlaces, Place[], number])[] = [
    ['command', command, commandPlaces(command), write.block],
    ['reply', reply, replyPlaces(reply), read.block],
  ];
  for (const [side, { byteLength, data }, places, block] of sides) {
    const all = [...places, { name: 'data', offset: data, length: block }];
    for (const [index, place] of all.entries()) {
      if (place.offset + place.length > byteLength)
        return refuse(
          `the ${side}'s ${place.name} ends at ${place.offset + place.length}, beyond its ${byteLength} bytes`,
        );
      const other = all.slice(index + 1).find((one) => overlap(one, place));
      if (other !== undefined)
        return refuse(
          `the ${side}'s ${place.name} and ${other.name} overlap at byte ${Math.max(place.offset, other.offset)}`,
        );
    }
  }
  const room = reply.byteLength - reply.data;
  const told = [
    ...identify.kinds.map((kind) => kind.offset + kind.bytes.length / 2),
    ...(identify.unit === null ? [] : [identify.unit.offset + identify.unit.length]),
    ...(battery === null ? [] : [battery.offset + 1]),
  ];
  if (told.some((end) => end > room)) return refuse(`what the pad is to tell of itself ends beyond the reply's data`);
  const limit = (place: ByteRange): number => 256 ** place.length - 1;
  if (limit(command.length) < Math.max(read.block, write.block))
    return refuse('the length has too few bytes for a block');
  return null;
}

function commandPlaces({ code, sequence, address, length: of, checksum: sum }: CommandPlaces): Place[] {
  return [
    { name: 'code', offset: code, length: 1 },
    { name: 'address', ...address },
    { name: 'length', ...of },
    ...sharedPlaces(sequence, sum),
  ];
}

function replyPlaces({ code, sequence, address, length: of, status, checksum: sum }: ReplyPlaces): Place[] {
  return [
    { name: 'code', offset: code.offset, length: 1 },
    { name: 'status', offset: status.offset, length: 1 },
    ...(address === null ? [] : [{ name: 'address', ...address }]),
    ...(of === null ? [] : [{ name: 'length', ...of }]),
    ...sharedPlaces(sequence, sum),
  ];
}

function sharedPlaces(sequence: number | null, sum: CommandPlaces['checksum']): Place[] {
  return [
    ...(sequence === null ? [] : [{ name: 'sequence', offset: sequence, length: 1 }]),
    ...(sum === null ? [] : [{ name: 'checksum', offset: sum.offset, length: checksumLength(sum.kind) }]),
  ];
}

function refuse(why: string): Problem {
  return failed('memory-protocol', `The memory protocol cannot be used: ${why}; correct the file.`).problem;
}
