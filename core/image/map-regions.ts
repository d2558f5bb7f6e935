/** The stretches of an image that a memory map names. */
import { STICKS } from '../pad/stick.ts';
import { checksumLength } from './checksum.ts';
import { LAYERS, type ByteRange, type LayerName, type MemoryMap } from './memory-map.ts';
import { lengthOf } from './stick-codec.ts';

export interface Region extends ByteRange {
  /** For people to read, e.g. `factory left stick`, `user marker`; nothing is decided by it. */
  readonly name: string;
  readonly role: 'stick' | 'checksum' | 'marker';
  readonly layer: LayerName;
}

/** Every stretch that may be written, in the order of the map: sticks, checksum and marker of each layer. */
export function regionsOf(map: Pick<MemoryMap, 'layers'>): Region[] {
  return LAYERS.flatMap((layer) => {
    const held = map.layers[layer];
    if (held === undefined) return [];
    const { marker, checksum } = held;
    const regions: Region[] = STICKS.flatMap((stick) => {
      const place = held.sticks[stick];
      if (place === undefined) return [];
      const range = { offset: place.offset, length: lengthOf(place.codec) };
      return [{ name: `${layer} ${stick} stick`, role: 'stick', layer, ...range }];
    });
    if (checksum !== null) {
      const range = { offset: checksum.offset, length: checksumLength(checksum.kind) };
      regions.push({ name: `${layer} checksum`, role: 'checksum', layer, ...range });
    }
    if (marker !== null) {
      const range = { offset: marker.offset, length: marker.valid.length / 2 };
      regions.push({ name: `${layer} marker`, role: 'marker', layer, ...range });
    }
    return regions;
  });
}

export function overlap(a: ByteRange, b: ByteRange): boolean {
  return a.offset < b.offset + b.length && b.offset < a.offset + a.length;
}

export function isWithin(inner: ByteRange, outer: ByteRange): boolean {
  return inner.offset >= outer.offset && inner.offset + inner.length <= outer.offset + outer.length;
}
