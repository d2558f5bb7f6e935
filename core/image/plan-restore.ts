/** Plans the bytes that bring another image back. */
import { toHex } from '../hid/hex.ts';
import { done, failed, type Result } from '../result.ts';
import { checkImage } from './check-image.ts';
import { checkRestored } from './check-restored.ts';
import { compareImages, type DifferingRun } from './compare-images.ts';
import { isWithin, regionsOf } from './map-regions.ts';
import type { ByteRange, MemoryMap } from './memory-map.ts';
import type { Patch } from './patch.ts';
import type { Digest } from './plan-patch.ts';

/** `calibration`: the places that the map names; `whole`: everything but what changes by itself. */
export type RestoreScope = 'calibration' | 'whole';

/**
 * From the image that stands to what an accepted image held. Refused: an image that the map was not made for, a plan without a
 * change, and a calibration alone that `checkRestored` does not let through. A whole image need not be plausible: the caller
 * answers for it that this pad held it.
 */
export function planRestore(
  image: Uint8Array,
  target: Uint8Array,
  map: MemoryMap,
  scope: RestoreScope,
  digest: Digest,
): Result<Patch> {
  const wrong = checkImage(image, map) ?? checkImage(target, map);
  if (wrong !== null) return { ok: false, problem: wrong };
  const after = restored(image, target, map, scope);
  const unfit = scope === 'calibration' ? checkRestored(image, after, map) : null;
  if (unfit !== null) return { ok: false, problem: unfit };
  const { runs } = compareImages(image, after, map);
  if (runs.length === 0)
    return failed('patch-nothing', 'The memory holds the bytes of that image already; there is nothing to write.');
  return done({
    kind: 'stickwright-patch',
    version: 1,
    map: map.id,
    sha256: digest(image),
    size: map.size,
    changes: joined(runs).map(({ offset, length, names }) => ({
      offset,
      old: toHex(image.subarray(offset, offset + length)),
      new: toHex(after.subarray(offset, offset + length)),
      means: names.length > 0 ? names.join('; ') : `bytes ${offset} to ${offset + length - 1}`,
    })),
    result: digest(after),
    restores: true,
  });
}

function restored(image: Uint8Array, target: Uint8Array, map: MemoryMap, scope: RestoreScope): Uint8Array {
  const regions = regionsOf(map);
  const after = Uint8Array.from(image);
  for (let at = 0; at < after.length; at += 1) {
    if (after[at] === target[at]) continue;
    const byte = { offset: at, length: 1 };
    if (map.volatile.some((range) => isWithin(byte, range))) continue;
    if (scope === 'calibration' && !regions.some((region) => isWithin(byte, region))) continue;
    after[at] = target[at] ?? 0;
  }
  return after;
}

interface Stretch extends ByteRange {
  readonly names: readonly string[];
}

/** Runs of one named value or region are one stretch, whatever bytes between them stay: a name is told once. */
function joined(runs: readonly DifferingRun[]): Stretch[] {
  const stretches: Stretch[] = [];
  for (const { offset, old, means } of runs) {
    const [names, last] = [means?.split('; ') ?? [], stretches.at(-1)];
    const end = offset + old.length / 2;
    if (last !== undefined && names.some((name) => last.names.includes(name)))
      stretches[stretches.length - 1] = {
        offset: last.offset,
        length: end - last.offset,
        names: [...new Set([...last.names, ...names])],
      };
    else stretches.push({ offset, length: end - offset, names });
  }
  return stretches;
}
