/** What the layers of an image hold. */
import { toHex } from '../hid/hex.ts';
import type { StickMapping } from '../mapping/mapping.ts';
import { STICKS, type StickId } from '../pad/stick.ts';
import { checksumLength, checksumOf } from './checksum.ts';
import { isPlausible, whyImplausible } from './plausible.ts';
import { LAYERS, type Layer, type LayerName, type MemoryMap } from './memory-map.ts';
import { decodeStick, lengthOf } from './stick-codec.ts';

export interface StoredStick {
  readonly stick: StickId;
  readonly offset: number;
  /** The bytes, hex. */
  readonly bytes: string;
  /** Null where they are no minimum, centre and maximum. */
  readonly mapping: StickMapping | null;
  /** What is not plausible about it, one sentence; null where nothing is. */
  readonly implausible: string | null;
}

export interface DecodedLayer {
  readonly layer: LayerName;
  /** `none`: the map knows no marker, and the layer counts as valid. */
  readonly marker: 'valid' | 'empty' | 'other' | 'none';
  readonly checksum: { readonly stored: string; readonly computed: string; readonly good: boolean } | null;
  readonly sticks: readonly StoredStick[];
}

/** The image is one that `checkImage` let pass. */
export function decodeLayers(image: Uint8Array, map: MemoryMap): DecodedLayer[] {
  return LAYERS.flatMap((name) => {
    const layer = map.layers[name];
    return layer === undefined ? [] : [decodeLayer(image, map, name, layer)];
  });
}

function decodeLayer(image: Uint8Array, map: MemoryMap, name: LayerName, layer: Layer): DecodedLayer {
  const sticks = STICKS.flatMap((stick) => {
    const place = layer.sticks[stick];
    if (place === undefined) return [];
    const decoded = decodeStick(place.codec, image, place.offset);
    const good = decoded !== null && isPlausible(decoded, map.plausible);
    return [
      {
        stick,
        offset: place.offset,
        bytes: toHex(image.subarray(place.offset, place.offset + lengthOf(place.codec))),
        mapping: good ? decoded : null,
        implausible: good ? null : whyImplausible(decoded, map.plausible),
      },
    ];
  });
  return { layer: name, marker: markerOf(image, layer), checksum: checksumOfLayer(image, layer), sticks };
}

function markerOf(image: Uint8Array, { marker }: Layer): DecodedLayer['marker'] {
  if (marker === null) return 'none';
  const bytes = toHex(image.subarray(marker.offset, marker.offset + marker.valid.length / 2));
  if (bytes === marker.valid) return 'valid';
  return bytes === marker.empty ? 'empty' : 'other';
}

function checksumOfLayer(image: Uint8Array, { checksum }: Layer): DecodedLayer['checksum'] {
  if (checksum === null) return null;
  const { kind, offset, endian, covers } = checksum;
  const stored = toHex(image.subarray(offset, offset + checksumLength(kind)));
  const computed = toHex(checksumOf(kind, endian, image.subarray(covers.offset, covers.offset + covers.length)));
  return { stored, computed, good: stored === computed };
}
