/** Cuts a patch into the blocks that a pad takes, in the order in which they are written. */
import { readHex } from '../hid/hex.ts';
import { isWithin, overlap, regionsOf, type Region } from './map-regions.ts';
import { LAYERS, type ByteRange, type MemoryMap } from './memory-map.ts';
import type { MemoryProtocol } from './memory-protocol.ts';
import type { Patch } from './patch.ts';

export interface WriteBlock {
  readonly offset: number;
  readonly old: Uint8Array;
  readonly new: Uint8Array;
}

/** A layer is made invalid before its numbers change, and valid after: 0 marker away, 1 numbers, 2 checksum, 3 marker set. */
type Rank = 0 | 1 | 2 | 3;

/** `before` and `after` are the images on both sides of the patch. Neighbouring changes of one rank are written together. */
export function writeBlocks(
  { changes }: Pick<Patch, 'changes'>,
  before: Uint8Array,
  after: Uint8Array,
  map: MemoryMap,
  { write }: MemoryProtocol,
): WriteBlock[] {
  const regions = regionsOf(map);
  const bytes = changes
    .flatMap(({ offset, new: now }) => Array.from({ length: now.length / 2 }, (_, index) => offset + index))
    .sort((a, b) => a - b);
  const ranked = bytes.map((at) => ({ at, rank: rankOf(at, regions, after, map) }));
  const blocks: { rank: Rank; offset: number; length: number }[] = [];
  for (const { at, rank } of ranked) {
    const last = blocks.at(-1);
    const isNext =
      last?.rank === rank &&
      last.offset + last.length === at &&
      last.length < write.block &&
      (write.page === null || at % write.page !== 0);
    if (isNext) last.length += 1;
    else blocks.push({ rank, offset: at, length: 1 });
  }
  return blocks
    .sort((a, b) => a.rank - b.rank || a.offset - b.offset)
    .map(({ offset, length }) => ({
      offset,
      old: before.slice(offset, offset + length),
      new: after.slice(offset, offset + length),
    }));
}

function rankOf(at: number, regions: readonly Region[], after: Uint8Array, map: MemoryMap): Rank {
  const byte: ByteRange = { offset: at, length: 1 };
  const region = regions.find((one) => isWithin(byte, one));
  if (region?.name.endsWith('checksum') === true) return 2;
  if (region?.name.endsWith('marker') !== true) return 1;
  const isValid = LAYERS.some((name) => {
    const marker = map.layers[name]?.marker;
    if (marker == null || !overlap(region, { offset: marker.offset, length: marker.valid.length / 2 })) return false;
    const valid = readHex(marker.valid);
    return valid.ok && valid.value.every((one, index) => after[marker.offset + index] === one);
  });
  return isValid ? 3 : 0;
}
