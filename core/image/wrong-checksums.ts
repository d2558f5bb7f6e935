/** Layers in use whose stored checksum does not fit their bytes: the map probably does not describe this memory. */
import { decodeLayers, type DecodedLayer } from './decode-layers.ts';
import type { MemoryMap } from './memory-map.ts';

/** One whose marker says that it is not in use is passed over: its checksum was perhaps never written. */
export function wrongChecksums(image: Uint8Array, map: MemoryMap): DecodedLayer[] {
  return decodeLayers(image, map).filter(
    ({ marker, checksum }) => (marker === 'valid' || marker === 'none') && checksum?.good === false,
  );
}

/** E.g. "The stored checksum of the user layer is wrong already: the map bench-pad is probably wrong for this memory." */
export function sayWrongChecksums(wrong: readonly DecodedLayer[], { id }: MemoryMap): string {
  const names = wrong.map(({ layer }) => layer).join(' and the ');
  const [what, verb] = wrong.length === 1 ? ['checksum', 'is'] : ['checksums', 'are'];
  return `The stored ${what} of the ${names} layer ${verb} wrong already: the map ${id} is probably wrong for this memory.`;
}
