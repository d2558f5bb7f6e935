/** Brings checksums and the marker of a layer after numbers that were changed. */
import { readHex, toHex } from '../hid/hex.ts';
import { done, failed, type Result } from '../result.ts';
import { checksumOf } from './checksum.ts';
import { decodeLayers } from './decode-layers.ts';
import type { LayerName, MemoryMap } from './memory-map.ts';
import type { Change } from './patch.ts';
import { settleOrder } from './settle-order.ts';

/**
 * Writes into `after` what `image` with new numbers in the layer `name` needs: that layer's marker, its checksum, and every other
 * checksum that was right in `image`, each after what it covers. Refused: a map whose checksums run in a circle or whose marker is no hex.
 */
export function settle(image: Uint8Array, after: Uint8Array, map: MemoryMap, name: LayerName): Result<Change[]> {
  const order = settleOrder(map);
  if (!order.ok) return order;
  const right = new Set(
    decodeLayers(image, map).flatMap(({ layer, checksum }) => (checksum?.good === true ? layer : [])),
  );
  const changes: Change[] = [];
  for (const { role, layer, name: label, offset } of order.value) {
    const { marker, checksum } = map.layers[layer] ?? {};
    if (role === 'marker' && marker != null && layer === name) {
      const valid = readHex(marker.valid);
      if (!valid.ok)
        return failed('memory-map', `The memory map cannot be used: the ${label} is no hex; correct the map.`);
      changes.push(...overwrite(after, offset, valid.value, () => `${label}: valid from now on`));
    }
    if (role === 'checksum' && checksum != null && (layer === name || right.has(layer))) {
      const { kind, endian, covers } = checksum;
      const bytes = checksumOf(kind, endian, after.subarray(covers.offset, covers.offset + covers.length));
      changes.push(...overwrite(after, offset, bytes, (old, now) => `${label} ${old} → ${now}`));
    }
  }
  return done(changes);
}

function overwrite(
  after: Uint8Array,
  offset: number,
  bytes: Uint8Array,
  says: (old: string, now: string) => string,
): Change[] {
  const old = toHex(after.subarray(offset, offset + bytes.length));
  const now = toHex(bytes);
  after.set(bytes, offset);
  return old === now ? [] : [{ offset, old, new: now, means: says(old, now) }];
}
