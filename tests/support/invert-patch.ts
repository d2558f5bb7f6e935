/** The patch that brings an image back, for what must be true of every patch. */
import type { Patch } from '../../core/image/patch.ts';
import type { Digest } from '../../core/image/plan-patch.ts';

/** `after` is the image that the patch made of it. */
export function invertPatch(patch: Patch, after: Uint8Array, digest: Digest): Patch {
  const changes = patch.changes
    .map(({ offset, old, new: now, means }) => ({ offset, old: now, new: old, means: `undo: ${means}` }))
    .reverse();
  return { ...patch, sha256: digest(after), changes, result: patch.sha256, restores: true };
}
