/** Layers in use whose stored checksum does not fit their bytes: the map probably does not describe this memory. */
import { failed, type Problem } from '../result.ts';
import { decodeLayers, type DecodedLayer } from './decode-layers.ts';
import type { MemoryMap } from './memory-map.ts';
import { isMarkedLayer } from './valid-layers.ts';

/** One whose marker says that it is not in use is passed over: its checksum was perhaps never written. */
export function wrongChecksums(image: Uint8Array, map: MemoryMap): DecodedLayer[] {
  return decodeLayers(image, map).filter((layer) => isMarkedLayer(layer) && layer.checksum?.good === false);
}

/** E.g. "The stored checksum of the user layer is wrong already: the map bench-pad is probably wrong for this memory." */
export function sayWrongChecksums(wrong: readonly DecodedLayer[], { id }: MemoryMap): string {
  const names = wrong.map(({ layer }) => layer).join(' and the ');
  const [what, verb] = wrong.length === 1 ? ['checksum', 'is'] : ['checksums', 'are'];
  return `The stored ${what} of the ${names} layer ${verb} wrong already: the map ${id} is probably wrong for this memory.`;
}

/** Null where every checksum of a layer in use is right. */
export function checkChecksums(image: Uint8Array, map: MemoryMap): Problem | null {
  const wrong = wrongChecksums(image, map);
  if (wrong.length === 0) return null;
  const what = 'correct the map, or read the memory again';
  return failed('patch-wrong-checksum', `${sayWrongChecksums(wrong, map).replace(/\.$/u, '')}; ${what}.`).problem;
}
