/** Applies a patch to the one image that it was planned for; the image given is never changed. */
import { readHex } from '../hid/hex.ts';
import { failed, type Problem, type Result } from '../result.ts';
import { checkImage } from './check-image.ts';
import { checkRestored } from './check-restored.ts';
import { decodeLayers } from './decode-layers.ts';
import { isWithin, overlap, regionsOf } from './map-regions.ts';
import type { ByteRange, MemoryMap } from './memory-map.ts';
import type { Patch } from './patch.ts';
import { patchedImage } from './patched-image.ts';
import type { Digest, PlanOptions } from './plan-patch.ts';
import { isMarkedLayer } from './valid-layers.ts';
import { checkChecksums } from './wrong-checksums.ts';

/**
 * Refused: another image, size or map, a change outside of the map's regions or over another change, old bytes that are not
 * there, a result other than the planned one, and layers that would not be plausible or have a wrong checksum. A patch that
 * restores may leave a layer that is not in use without plausible numbers, for what was never written has none; `checkRestored`
 * holds it to the others. A checksum that is wrong already, or comes back wrong, is refused unless that is accepted.
 */
export function applyPatch(
  image: Uint8Array,
  patch: Patch,
  map: MemoryMap,
  digest: Digest,
  { acceptsWrongChecksum = false }: PlanOptions = {},
): Result<Uint8Array> {
  const isWrongBefore = !acceptsWrongChecksum && patch.restores !== true;
  const wrong =
    checkFits(image, patch, map, digest) ??
    checkChanges(image, patch, map) ??
    (isWrongBefore ? checkChecksums(image, map) : null);
  if (wrong !== null) return { ok: false, problem: wrong };
  const after = patchedImage(image, patch.changes);
  if (!after.ok) return after;
  const bad = checkResult(image, after.value, patch, map, digest, acceptsWrongChecksum);
  return bad === null ? after : { ok: false, problem: bad };
}

function checkFits(image: Uint8Array, patch: Patch, map: MemoryMap, digest: Digest): Problem | null {
  if (patch.map !== map.id)
    return refuse('patch-map', `The patch was planned with the map ${patch.map}, not ${map.id}; give that map.`);
  if (patch.size !== image.length)
    return refuse(
      'patch-size',
      `The patch was planned for an image of ${patch.size} bytes and this one has ${image.length}; plan it again for this image.`,
    );
  if (digest(image) !== patch.sha256)
    return refuse(
      'patch-image',
      'The patch was planned for another image: its SHA-256 differs; plan it again for this image.',
    );
  return checkImage(image, map);
}

function checkChanges(image: Uint8Array, patch: Patch, map: MemoryMap): Problem | null {
  const regions = regionsOf(map);
  const taken: ByteRange[] = [];
  for (const change of patch.changes) {
    const range = { offset: change.offset, length: change.old.length / 2 };
    if (!regions.some((region) => isWithin(range, region)))
      return refuse(
        'patch-outside-map',
        `The change at byte ${range.offset} lies outside of what the map ${map.id} names; the patch is refused.`,
      );
    if (taken.some((one) => overlap(one, range)))
      return refuse('patch-overlap', `Two changes of the patch touch byte ${range.offset}; the patch is refused.`);
    taken.push(range);
    const old = readHex(change.old);
    if (!old.ok) return old.problem;
    if (old.value.some((byte, index) => image[range.offset + index] !== byte))
      return refuse(
        'patch-old-bytes',
        `At byte ${range.offset} the image does not hold what the patch expects; plan it again for this image.`,
      );
  }
  return null;
}

function checkResult(
  image: Uint8Array,
  after: Uint8Array,
  patch: Patch,
  map: MemoryMap,
  digest: Digest,
  acceptsWrongChecksum: boolean,
): Problem | null {
  const isAsPlanned = patch.result !== undefined && digest(after) === patch.result;
  if (patch.result !== undefined && !isAsPlanned)
    return refuse('patch-edited', 'The patch was changed after it was planned: its result is another; plan it again.');
  if (patch.restores === true && isAsPlanned)
    return checkRestored(image, after, map) ?? (acceptsWrongChecksum ? null : checkChecksums(after, map));
  const before = decodeLayers(image, map);
  const regions = regionsOf(map);
  for (const decoded of decodeLayers(after, map)) {
    const { layer, sticks, checksum } = decoded;
    const touched = regions.filter(
      (region) =>
        region.layer === layer &&
        patch.changes.some(({ offset, old }) => overlap(region, { offset, length: old.length / 2 })),
    );
    const isTouched = touched.length > 0;
    // A checksum may be kept right over what others own too: of a layer that is not in use whatever stands there may stay.
    const isJudged = touched.some(({ role }) => role === 'stick') || (isTouched && isMarkedLayer(decoded));
    const bad = isJudged ? sticks.find(({ mapping }) => mapping === null) : undefined;
    if (bad !== undefined)
      return refuse(
        'patch-implausible',
        `The ${layer} layer's ${bad.stick} stick would not be plausible: ${bad.implausible ?? ''} The patch is refused.`,
      );
    const wasGood = before.find((one) => one.layer === layer)?.checksum?.good === true;
    if (checksum?.good === false && (isTouched || wasGood))
      return refuse('patch-checksum', `The ${layer} layer's checksum would be wrong; the patch is refused.`);
  }
  return null;
}

function refuse(code: string, says: string): Problem {
  return failed(code, says).problem;
}
