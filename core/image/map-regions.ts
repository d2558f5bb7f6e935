/** The stretches of an image that a memory map names. */
import { STICKS } from '../pad/stick.ts';
import { checksumLength } from './checksum.ts';
import { LAYERS, type ByteRange, type MemoryMap } from './memory-map.ts';
import { lengthOf } from './stick-codec.ts';

export interface Region extends ByteRange {
  /** E.g. `factory left stick`, `user marker`. */
  readonly name: string;
}

/** Every stretch that may be written, in the order of the map: sticks, checksum and marker of each layer. */
export function regionsOf(map: Pick<MemoryMap, 'layers'>): Region[] {
  return LAYERS.flatMap((name) => {
    const layer = map.layers[name];
    if (layer === undefined) return [];
    const { marker, checksum } = layer;
    return [
      ...STICKS.flatMap((stick) => {
        const place = layer.sticks[stick];
        if (place === undefined) return [];
        return [{ name: `${name} ${stick} stick`, offset: place.offset, length: lengthOf(place.codec) }];
      }),
      ...(checksum === null
        ? []
        : [{ name: `${name} checksum`, offset: checksum.offset, length: checksumLength(checksum.kind) }]),
      ...(marker === null ? [] : [{ name: `${name} marker`, offset: marker.offset, length: marker.valid.length / 2 }]),
    ];
  });
}

export function overlap(a: ByteRange, b: ByteRange): boolean {
  return a.offset < b.offset + b.length && b.offset < a.offset + a.length;
}

export function isWithin(inner: ByteRange, outer: ByteRange): boolean {
  return inner.offset >= outer.offset && inner.offset + inner.length <= outer.offset + outer.length;
}
