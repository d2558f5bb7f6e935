/** What a patch must be asked for. */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import type { Change } from '../../../core/image/patch.ts';
import { patchAsks } from '../../../core/image/patch-asks.ts';
import { planRestore } from '../../../core/image/plan-restore.ts';
import { patchedImage } from '../../../core/image/patched-image.ts';
import { bothMappings, makeImage } from '../../support/make-image.ts';

const [packed, words] = bundledMaps as [MemoryMap, MemoryMap];
const digest = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const sound = makeImage(words, { factory: bothMappings });

function flip(image: Uint8Array, at: number): Uint8Array {
  return Uint8Array.from(image, (byte, index) => (index === at ? byte ^ 1 : byte));
}
function changeAt(offset: number): Pick<Change, 'offset' | 'old' | 'new' | 'means'>[] {
  return [{ offset, old: '0000', new: '0101', means: 'a change' }];
}
function codes(image: Uint8Array, changes: Change[], map: MemoryMap): string[] {
  return patchAsks(image, { changes }, map).map(({ code }) => code);
}

describe('patchAsks', () => {
  it('asks for the factory layer where a change touches any of its bytes', () => {
    const image = makeImage(packed, { factory: bothMappings, user: bothMappings });
    const { factory, user } = packed.layers;
    expect(codes(image, changeAt(user!.sticks.left!.offset), packed)).toEqual([]);
    expect(codes(image, changeAt(factory!.sticks.left!.offset - 1), packed)).toEqual(['factory']);
    const [ask] = patchAsks(sound, { changes: changeAt(words.layers.factory!.checksum!.offset) }, words);
    expect(ask).toEqual({
      code: 'factory',
      says: 'This changes the factory layer, the fall-back that the pad goes back to; it has no other layer.',
    });
  });

  it('asks where the stored checksum is wrong already, and says that the map is probably wrong', () => {
    const [, ask] = patchAsks(flip(sound, words.layers.factory!.checksum!.offset), { changes: changeAt(0x100) }, words);
    expect(ask).toEqual({
      code: 'wrong-checksum',
      says: `The stored checksum of the factory layer is wrong already: the map ${words.id} is probably wrong for this memory.`,
    });
  });

  it('judges a restore by what it brings back', () => {
    const broken = flip(sound, words.layers.factory!.sticks.left!.offset);
    const asked = (from: Uint8Array, to: Uint8Array): string[] => {
      const patch = planRestore(from, to, words, 'whole', digest);
      return patch.ok ? patchAsks(from, patch.value, words).map(({ code }) => code) : [patch.problem.code];
    };
    expect(asked(broken, sound)).toEqual(['factory']);
    expect(asked(sound, broken)).toEqual(['factory', 'wrong-checksum']);
  });

  it('passes over the checksum of a layer that its marker says is not in use', () => {
    const { factory } = words.layers;
    const map: MemoryMap = {
      ...words,
      layers: { factory: { ...factory!, marker: { offset: 0x200, valid: '1234', empty: 'ffff' } } },
    };
    const unused = flip(makeImage(map, {}), factory!.checksum!.offset);
    expect(codes(unused, changeAt(0x300), map)).toEqual([]);
    const used = unused.slice();
    used.set([0x12, 0x34], 0x200);
    expect(codes(used, changeAt(0x300), map)).toEqual(['wrong-checksum']);
  });
});

describe('patchedImage', () => {
  it('refuses bad hex and what ends beyond the image, and leaves the image alone', () => {
    const image = Uint8Array.of(1, 2, 3);
    const change = (offset: number, now: string) => patchedImage(image, [{ offset, old: '00', new: now }]);
    expect(change(1, '09')).toEqual({ ok: true, value: Uint8Array.of(1, 9, 3) });
    expect(image).toEqual(Uint8Array.of(1, 2, 3));
    expect(change(1, '0g')).toMatchObject({ ok: false, problem: { code: 'patch-hex' } });
    expect(change(2, '0909')).toMatchObject({ ok: false, problem: { code: 'patch-beyond-image' } });
  });
});
