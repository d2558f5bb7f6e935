/** Cuts a patch into the blocks that a pad takes, in the order in which they are written. */
import { done, type Result } from '../result.ts';
import { isWithin, regionsOf, type Region } from './map-regions.ts';
import { maskLayers } from './mask-layers.ts';
import { LAYERS, type ByteRange, type MemoryMap } from './memory-map.ts';
import type { MemoryProtocol } from './memory-protocol.ts';
import type { Patch } from './patch.ts';
import { settleOrder } from './settle-order.ts';

export interface WriteBlock {
  readonly offset: number;
  /** As it stands when the block's turn comes. */
  readonly old: Uint8Array;
  readonly new: Uint8Array;
}

type Limits = MemoryProtocol['write'];

/**
 * `before` and `after` are the images on both sides of the patch. First the layers whose numbers change are made invalid, then
 * numbers change, then checksums and markers follow in `settleOrder`: a layer with a marker or a checksum is never valid
 * with some of its numbers old and some new, wherever the writing stops. The blocks backwards, each with its old bytes, are as safe.
 * Neighbouring changes of one kind are written together.
 */
export function writeBlocks(
  { changes }: Pick<Patch, 'changes'>,
  before: Uint8Array,
  after: Uint8Array,
  map: MemoryMap,
  { write }: MemoryProtocol,
): Result<WriteBlock[]> {
  const order = settleOrder(map);
  if (!order.ok) return order;
  const changed = changes.flatMap(({ offset, old }) => offsetsOf({ offset, length: old.length / 2 }));
  const body = bodyOf(changed, order.value, map, write);
  const mask = maskLayers({ before, after }, map, order.value, body);
  if (!mask.ok) return mask;
  const { image: masked, regions } = mask.value;
  const toMask = regions.flatMap((region) => cut(offsetsOf(region), write));
  const toSettle = order.value.flatMap((region) => {
    const isMasked = regions.includes(region);
    const offsets = isMasked ? offsetsOf(region) : changed.filter((at) => isAt(at, region));
    return offsets.every((at) => masked[at] === after[at]) ? [] : cut(offsets, write);
  });
  const state = Uint8Array.from(before);
  const stepsTo = (image: Uint8Array, ranges: readonly ByteRange[]): WriteBlock[] =>
    ranges.map(({ offset, length }) => {
      const old = state.slice(offset, offset + length);
      state.set(image.subarray(offset, offset + length), offset);
      return { offset, old, new: image.slice(offset, offset + length) };
    });
  return done([...stepsTo(masked, toMask), ...stepsTo(after, [...body, ...toSettle])]);
}

/** All but checksums and markers; the sticks of one layer follow one another, so that few states stand between. */
function bodyOf(changed: readonly number[], settled: readonly Region[], map: MemoryMap, write: Limits): ByteRange[] {
  const sticks = regionsOf(map).filter(({ role }) => role === 'stick');
  const body = changed.filter((at) => !settled.some((region) => isAt(at, region)));
  const layerAt = (at: number) => sticks.find((region) => isAt(at, region))?.layer;
  return [undefined, ...LAYERS].flatMap((layer) =>
    cut(
      body.filter((at) => layerAt(at) === layer),
      write,
    ),
  );
}

function cut(offsets: readonly number[], { block, page }: Limits): ByteRange[] {
  const ranges: { offset: number; length: number }[] = [];
  for (const at of offsets.toSorted((a, b) => a - b)) {
    const last = ranges.at(-1);
    const isNext =
      last !== undefined &&
      last.offset + last.length === at &&
      last.length < block &&
      (page === null || at % page !== 0);
    if (isNext) last.length += 1;
    else ranges.push({ offset: at, length: 1 });
  }
  return ranges;
}

function offsetsOf({ offset, length }: ByteRange): number[] {
  return Array.from({ length }, (_, index) => offset + index);
}

function isAt(at: number, region: ByteRange): boolean {
  return isWithin({ offset: at, length: 1 }, region);
}
