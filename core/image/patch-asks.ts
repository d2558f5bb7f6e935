/** What a patch must be asked for before it is written: each ask is a plain sentence that is confirmed by itself. */
import type { PatchAsk } from './ask.ts';
import { overlap, regionsOf } from './map-regions.ts';
import type { MemoryMap } from './memory-map.ts';
import type { Patch } from './patch.ts';
import { patchedImage } from './patched-image.ts';
import { sayWrongChecksums, wrongChecksums } from './wrong-checksums.ts';

/**
 * `image` is the one that the patch is for. A patch that restores is judged by what it brings back: that a write which broke off
 * left a checksum wrong says nothing about the map.
 */
export function patchAsks(
  image: Uint8Array,
  patch: Pick<Patch, 'changes' | 'restores'>,
  map: MemoryMap,
): readonly PatchAsk[] {
  const asks: PatchAsk[] = [];
  if (touchesFactory(patch, map)) asks.push({ code: 'factory', says: sayFactory(map) });
  const result = patch.restores === true ? patchedImage(image, patch.changes) : null;
  const wrong = wrongChecksums(result?.ok === true ? result.value : image, map);
  if (wrong.length > 0) asks.push({ code: 'wrong-checksum', says: sayWrongChecksums(wrong, map) });
  return asks;
}

function touchesFactory({ changes }: Pick<Patch, 'changes'>, map: MemoryMap): boolean {
  const regions = regionsOf(map).filter(({ layer }) => layer === 'factory');
  return changes.some(({ offset, old }) =>
    regions.some((region) => overlap(region, { offset, length: old.length / 2 })),
  );
}

function sayFactory({ layers }: MemoryMap): string {
  const other = layers.user === undefined ? 'it has no other layer' : 'the user layer can be written instead';
  return `This changes the factory layer, the fall-back that the pad goes back to; ${other}.`;
}
