/** Whether the numbers of a patch may go into the very memory that it was planned for. */
import type { StickMapping } from '../mapping/mapping.ts';
import type { PadOwner } from '../pad/owner.ts';
import { done, type Result } from '../result.ts';
import type { PatchAsk } from './ask.ts';
import { checkImage } from './check-image.ts';
import { decodeLayers, type DecodedLayer, type StoredStick } from './decode-layers.ts';
import type { LayerName, MemoryMap } from './memory-map.ts';
import { judgeSource } from './number-source.ts';
import { sourceOfPatch, type Patch } from './patch.ts';
import { patchedImage } from './patched-image.ts';

/**
 * As `judgeSource` does; `image` is the one that the patch is for, byte for byte. Numbers that are carried from one layer of it
 * to another are its own, whoever knows whose image it is: nothing is asked of them. What is refused stays refused.
 */
export function judgePatch(
  image: Uint8Array,
  patch: Patch,
  map: MemoryMap,
  owners: readonly PadOwner[],
): Result<readonly PatchAsk[]> {
  const judged = judgeSource(sourceOfPatch(patch), owners);
  return judged.ok && patch.restores !== true && isCarried(image, patch, map) ? done([]) : judged;
}

function isCarried(image: Uint8Array, { changes }: Patch, map: MemoryMap): boolean {
  const after = patchedImage(image, changes);
  if (!after.ok || checkImage(image, map) !== null) return false;
  const before = decodeLayers(image, map);
  return decodeLayers(after.value, map).every(({ layer, sticks }) =>
    sticks.every((stored) => isHeld(before, layer, stored)),
  );
}

/** The stick stood there already, or another layer held its numbers. */
function isHeld(before: readonly DecodedLayer[], name: LayerName, { stick, bytes, mapping }: StoredStick): boolean {
  return before.some(({ layer, sticks }) => {
    const held = sticks.find((one) => one.stick === stick);
    return layer === name ? held?.bytes === bytes : isAlike(held?.mapping ?? null, mapping);
  });
}

function isAlike(one: StickMapping | null, other: StickMapping | null): boolean {
  if (one === null || other === null) return false;
  return (['x', 'y'] as const).every((axis) =>
    (['min', 'centre', 'max'] as const).every((number) => one[axis][number] === other[axis][number]),
  );
}
