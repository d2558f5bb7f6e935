/** What a write left: as before, as planned, or a named list of bytes that differ. */
import { toHex } from '../hid/hex.ts';
import { compareImages } from './compare-images.ts';
import { isWithin, overlap } from './map-regions.ts';
import type { ByteRange, MemoryMap } from './memory-map.ts';

/** A stretch that does not hold what it held before, or of which that is not known. */
export interface DifferingBytes {
  readonly offset: number;
  /** Hex. */
  readonly before: string;
  /** As planned. */
  readonly after: string;
  /** As read last; null where it could not be read. */
  readonly now: string | null;
  readonly means: string | null;
}

/** The memory as it is known: the bytes read last, and the stretches that were written to and not read since. */
export interface KnownMemory {
  readonly now: Uint8Array;
  readonly unknown: readonly ByteRange[];
}

/** `before` and `after` are the images on both sides of the plan; bytes that change by themselves are passed over. */
export function memoryEnd(
  { now, unknown }: KnownMemory,
  before: Uint8Array,
  after: Uint8Array,
  { volatile }: MemoryMap,
): 'before' | 'after' | 'differs' {
  if (unknown.length > 0) return 'differs';
  if (firstDifference(now, before, volatile) === null) return 'before';
  return firstDifference(now, after, volatile) === null ? 'after' : 'differs';
}

/** Offset of the first byte that differs outside of what changes by itself; null where none does. */
export function firstDifference(a: Uint8Array, b: Uint8Array, volatile: readonly ByteRange[]): number | null {
  for (let at = 0; at < a.length; at += 1) {
    if (a[at] === b[at]) continue;
    if (!volatile.some((range) => isWithin({ offset: at, length: 1 }, range))) return at;
  }
  return null;
}

export function differingBytes(
  { now, unknown }: KnownMemory,
  before: Uint8Array,
  after: Uint8Array,
  map: MemoryMap,
): DifferingBytes[] {
  const planned = compareImages(before, after, map).runs;
  const hex = (image: Uint8Array, { offset, length }: ByteRange): string =>
    toHex(image.subarray(offset, offset + length));
  const read = compareImages(before, now, map)
    .runs.map((run) => ({ offset: run.offset, length: run.old.length / 2, means: run.means, volatile: run.volatile }))
    .filter((run) => !run.volatile && !unknown.some((range) => overlap(range, run)))
    .map((run) => ({ ...run, now: hex(now, run) }));
  const unread = unknown.map((range) => ({
    ...range,
    means: planned.find((run) => overlap({ offset: run.offset, length: run.old.length / 2 }, range))?.means ?? null,
    now: null,
  }));
  return [...read, ...unread]
    .sort((a, b) => a.offset - b.offset)
    .map((range) => ({
      offset: range.offset,
      before: hex(before, range),
      after: hex(after, range),
      now: range.now,
      means: range.means,
    }));
}
