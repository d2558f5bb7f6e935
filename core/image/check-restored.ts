/** Refuses a restore that would bring numbers into use that cannot be any. */
import { failed, type Problem } from '../result.ts';
import { decodeLayers } from './decode-layers.ts';
import type { MemoryMap } from './memory-map.ts';
import { isMarkedLayer } from './valid-layers.ts';

/**
 * A stick that is not plausible, in a layer whose marker says that it is in use, where the image does not hold the very same
 * already. A patch file can call any bytes a restore, and a calibration taken from another image becomes a new mixture: neither
 * is let through. Only the whole of an image that this pad was seen to hold, and the end of a write that broke off, come back
 * whatever they are: `planRestore` in the scope `whole`, planned by the program itself.
 */
export function checkRestored(image: Uint8Array, after: Uint8Array, map: MemoryMap): Problem | null {
  const before = decodeLayers(image, map);
  for (const { layer, sticks } of decodeLayers(after, map).filter(isMarkedLayer)) {
    const held = before.filter(isMarkedLayer).find((one) => one.layer === layer);
    for (const { stick, mapping, implausible, bytes } of sticks) {
      if (mapping !== null || held?.sticks.some((one) => one.stick === stick && one.bytes === bytes) === true) continue;
      return failed(
        'restore-implausible',
        `The ${layer} layer's ${stick} stick would not be plausible (${implausible ?? ''}); restore the whole of an image that was read from this pad, or plan new numbers.`,
      ).problem;
    }
  }
  return null;
}
