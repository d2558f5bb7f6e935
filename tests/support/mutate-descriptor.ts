/** Damages report descriptors in the ways that firmware, cables and files do, seeded. */
import type { Random } from '../../core/numeric/random.ts';

/** A whole number in 0 … below − 1. */
export function pick(random: Random, below: number): number {
  return Math.floor(random.next() * below);
}

function byte(random: Random): number {
  return pick(random, 256);
}

type Change = (bytes: number[], random: Random, others: readonly Uint8Array[]) => void;

const changes: readonly Change[] = [
  function flipBit(bytes, random) {
    const at = pick(random, bytes.length);
    bytes[at] = (bytes[at] ?? 0) ^ (1 << pick(random, 8));
  },
  function replaceByte(bytes, random) {
    bytes[pick(random, bytes.length)] = byte(random);
  },
  function insertByte(bytes, random) {
    bytes.splice(pick(random, bytes.length + 1), 0, byte(random));
  },
  function removeSpan(bytes, random) {
    bytes.splice(pick(random, bytes.length), 1 + pick(random, 8));
  },
  function cutEnd(bytes, random) {
    bytes.length = 1 + pick(random, bytes.length);
  },
  function repeatSpan(bytes, random) {
    const from = pick(random, bytes.length);
    const span = bytes.slice(from, from + 1 + pick(random, 24));
    bytes.splice(pick(random, bytes.length), 0, ...Array.from({ length: 1 + pick(random, 4) }, () => span).flat());
  },
  function splice(bytes, random, others) {
    const other = others[pick(random, others.length)] ?? new Uint8Array();
    const from = pick(random, other.length);
    bytes.splice(pick(random, bytes.length), pick(random, 32), ...other.subarray(from, from + 1 + pick(random, 64)));
  },
  function insertItem(bytes, random) {
    // Any global or local item with up to four bytes of data: counts, sizes and ranges of every magnitude.
    const prefix = (pick(random, 16) << 4) | ((1 + pick(random, 2)) << 2) | pick(random, 4);
    const size = (prefix & 3) === 3 ? 4 : prefix & 3;
    bytes.splice(pick(random, bytes.length), 0, prefix, ...Array.from({ length: size }, () => byte(random)));
  },
];

/** One to six changes of one of the seeds; one in 64 is random bytes from the start. */
export function mutateDescriptor(seeds: readonly Uint8Array[], random: Random): Uint8Array {
  if (pick(random, 64) === 0) return Uint8Array.from({ length: 1 + pick(random, 200) }, () => byte(random));
  const bytes = [...(seeds[pick(random, seeds.length)] ?? [])];
  for (let count = 1 + pick(random, 6); count > 0 && bytes.length > 0; count -= 1)
    changes[pick(random, changes.length)]?.(bytes, random, seeds);
  return Uint8Array.from(bytes);
}
