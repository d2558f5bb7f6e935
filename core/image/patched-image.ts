/** An image with the bytes of some changes in place. */
import { readHex } from '../hid/hex.ts';
import { done, failed, type Result } from '../result.ts';
import type { Change } from './patch.ts';

/**
 * A copy with the old or the new bytes of all changes; the image given is never changed. Refused: bytes that are no hex, and
 * a change that ends beyond the image. What cannot be read is never passed over, for the rest would be another image.
 */
export function patchedImage(
  image: Uint8Array,
  changes: readonly Pick<Change, 'offset' | 'old' | 'new'>[],
  side: 'old' | 'new' = 'new',
): Result<Uint8Array> {
  const copy = Uint8Array.from(image);
  for (const change of changes) {
    const bytes = readHex(change[side]);
    if (!bytes.ok)
      return failed(
        'patch-hex',
        `The bytes of the change at ${change.offset} cannot be read (${bytes.problem.says}); plan it again.`,
      );
    if (change.offset + bytes.value.length > copy.length)
      return failed(
        'patch-beyond-image',
        `The change at byte ${change.offset} ends beyond the ${copy.length} bytes of the image; plan it again.`,
      );
    copy.set(bytes.value, change.offset);
  }
  return done(copy);
}
