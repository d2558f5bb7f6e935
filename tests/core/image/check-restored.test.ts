/** Which numbers a restore may bring back. */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { applyPatch } from '../../../core/image/apply-patch.ts';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import { checkRestored } from '../../../core/image/check-restored.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { compareImages } from '../../../core/image/compare-images.ts';
import { patchedImage } from '../../../core/image/patched-image.ts';
import type { Patch } from '../../../core/image/patch.ts';
import { planRestore } from '../../../core/image/plan-restore.ts';
import { bothMappings, makeImage } from '../../support/make-image.ts';

const [packed] = bundledMaps as [MemoryMap];
const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const places = packed.layers.factory!.sticks;
const sound = makeImage(packed, { factory: bothMappings });
const ruined = sound.slice().fill(0, places.left!.offset, places.left!.offset + 9);

/** A patch file as anybody may write it: with the right result, and called a restore. */
function edited(from: Uint8Array, to: Uint8Array): Patch {
  const changes = compareImages(from, to, packed).runs.map(({ offset, old, new: now }) => ({
    offset,
    old,
    new: now,
    means: 'undo',
  }));
  const head = { kind: 'stickwright-patch', version: 1, map: packed.id, size: packed.size } as const;
  return { ...head, sha256: digest(from), changes, result: digest(to), restores: true };
}

describe('a restore', () => {
  it('lets no implausible number through from a patch file, whatever it is called', () => {
    expect(applyPatch(sound, edited(sound, ruined), packed, digest)).toMatchObject({
      ok: false,
      problem: { code: 'restore-implausible' },
    });
    expect(applyPatch(ruined, edited(ruined, sound), packed, digest)).toEqual({ ok: true, value: sound });
  });

  it('takes no implausible calibration from another image, but the whole of one that the pad held', () => {
    expect(planRestore(sound, ruined, packed, 'calibration', digest)).toMatchObject({
      problem: { code: 'restore-implausible' },
    });
    const whole = planRestore(sound, ruined, packed, 'whole', digest);
    expect(whole.ok ? patchedImage(sound, whole.value.changes) : whole).toEqual({ ok: true, value: ruined });
  });

  it('leaves alone what stands there already, in use or not', () => {
    const right = ruined.slice();
    right.set(
      makeImage(packed, { factory: { ...bothMappings, right: bothMappings.left! } }).subarray(
        places.right!.offset,
        places.right!.offset + 9,
      ),
      places.right!.offset,
    );
    expect(checkRestored(ruined, right, packed)).toBeNull();
    const { marker } = packed.layers.user!;
    expect(checkRestored(makeImage(packed, { factory: bothMappings, user: bothMappings }), sound, packed)).toBeNull();
    const inUse = sound.slice();
    inUse.set(Buffer.from(marker!.valid, 'hex'), marker!.offset);
    expect(checkRestored(sound, inUse, packed)?.code).toBe('restore-implausible');
  });
});
