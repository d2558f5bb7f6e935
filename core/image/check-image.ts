/** Refuses an image that a memory map was not made for. */
import { readHex } from '../hid/hex.ts';
import { failed, type Problem } from '../result.ts';
import type { MemoryMap } from './memory-map.ts';

/** Null for an image of the map's size with its fingerprint; else what is wrong in one sentence. */
export function checkImage(image: Uint8Array, map: MemoryMap): Problem | null {
  if (image.length === 0) return problem('image-empty', 'The image is empty; read the memory again.');
  const off = image.length - map.size;
  if (off !== 0)
    return problem(
      'image-size',
      `The image has ${image.length} bytes, ${Math.abs(off)} too ${off < 0 ? 'few' : 'many'} for the map ${map.id} (${map.size}); read the memory again, whole, or choose its map.`,
    );
  for (const { offset, bytes } of map.fingerprint) {
    const wanted = readHex(bytes);
    if (!wanted.ok) return wanted.problem;
    const at = wanted.value.findIndex((byte, index) => image[offset + index] !== byte);
    if (at >= 0)
      return problem(
        'image-fingerprint',
        `The image is not of the kind that the map ${map.id} describes: byte ${offset + at} differs from its fingerprint; choose its own map.`,
      );
  }
  return null;
}

/** Two readings of the same memory must agree outside of what changes by itself. */
export function checkCopies(first: Uint8Array, second: Uint8Array, map: MemoryMap): Problem | null {
  if (first.length !== second.length)
    return problem(
      'image-copies',
      `The two copies have ${first.length} and ${second.length} bytes; read the memory twice again until both agree.`,
    );
  for (let at = 0; at < first.length; at += 1) {
    if (first[at] === second[at]) continue;
    if (map.volatile.some(({ offset, length }) => at >= offset && at < offset + length)) continue;
    return problem(
      'image-copies',
      `The two copies differ at byte ${at}; read the memory twice again until both agree.`,
    );
  }
  return null;
}

function problem(code: string, says: string): Problem {
  return failed(code, says).problem;
}
