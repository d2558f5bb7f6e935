/** The digest that kept images, patches and whole-file writes are bound to. */
import { createHash } from 'node:crypto';

/** Lower-case hex. */
export function sha256Of(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
