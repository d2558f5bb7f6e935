/** Memory images of the bundled kind, filled with seeded bytes. */
import { readHex } from '../../core/hid/hex.ts';
import { checksumOf } from '../../core/image/checksum.ts';
import type { LayerName, MemoryMap } from '../../core/image/memory-map.ts';
import { encodeStick } from '../../core/image/stick-codec.ts';
import type { PadMapping, StickMapping } from '../../core/mapping/mapping.ts';
import { createRandom } from '../../core/numeric/random.ts';
import { STICKS } from '../../core/pad/stick.ts';

export const leftMapping: StickMapping = {
  x: { min: 850, centre: 2061, max: 3270 },
  y: { min: 840, centre: 2038, max: 3235 },
};
export const rightMapping: StickMapping = {
  x: { min: 825, centre: 2044, max: 3265 },
  y: { min: 850, centre: 2055, max: 3260 },
};
export const bothMappings: PadMapping = { left: leftMapping, right: rightMapping };

/** Layers that are given are valid; one with a marker that is not given was never written. */
export function makeImage(
  map: MemoryMap,
  layers: Readonly<Partial<Record<LayerName, PadMapping>>>,
  seed = 1,
): Uint8Array {
  const random = createRandom(seed);
  const image = Uint8Array.from({ length: map.size }, () => Math.floor(256 * random.next()));
  for (const { offset, bytes } of map.fingerprint) image.set(bytesOf(bytes), offset);
  for (const [name, layer] of Object.entries(map.layers)) {
    const mappings = layers[name as LayerName];
    for (const stick of STICKS) {
      const place = layer.sticks[stick];
      if (place === undefined) continue;
      const mapping = mappings?.[stick];
      if (mapping === undefined) image.fill(0xff, place.offset, place.offset + 9);
      else {
        const encoded = encodeStick(place.codec, mapping);
        if (!encoded.ok) throw new Error(encoded.problem.says);
        image.set(encoded.value, place.offset);
      }
    }
    const { marker, checksum } = layer;
    if (marker !== null) {
      const bytes = mappings === undefined ? marker.empty : marker.valid;
      if (bytes !== null) image.set(bytesOf(bytes), marker.offset);
    }
    // It may cover the marker.
    if (checksum !== null) {
      const { kind, offset, endian, covers } = checksum;
      image.set(checksumOf(kind, endian, image.subarray(covers.offset, covers.offset + covers.length)), offset);
    }
  }
  return image;
}

function bytesOf(hex: string): Uint8Array {
  const bytes = readHex(hex);
  if (!bytes.ok) throw new Error(bytes.problem.says);
  return bytes.value;
}
