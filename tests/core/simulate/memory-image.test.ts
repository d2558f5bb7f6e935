/** The simulated memory and the bundled maps share no code and say the same. */
import { describe, expect, it } from 'vitest';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import { checkImage } from '../../../core/image/check-image.ts';
import { decodeLayers } from '../../../core/image/decode-layers.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { isValidLayer } from '../../../core/image/valid-layers.ts';
import { demos } from '../../../core/simulate/demos.ts';
import { memoryImage } from '../../../core/simulate/memory-image.ts';

const [packed, words] = bundledMaps as [MemoryMap, MemoryMap];
const factory = demos.healthy.build.firmware;
const user = { left: factory.right, right: factory.left };

describe('memoryImage', () => {
  it.each([
    ['factory alone', null, [true, false]],
    ['both layers', user, [true, true]],
  ])('is what the packed map decodes: %s', (_, held, valid) => {
    const image = memoryImage('packed', { factory, user: held }, 3);
    expect(checkImage(image, packed)).toBeNull();
    const layers = decodeLayers(image, packed);
    expect(layers.map(isValidLayer)).toEqual(valid);
    const stored = layers.map(({ sticks }) => Object.fromEntries(sticks.map(({ stick, mapping }) => [stick, mapping])));
    expect(stored[0]).toEqual(factory);
    if (held !== null) expect(stored[1]).toEqual(held);
    expect(layers[1]?.marker).toBe(held === null ? 'empty' : 'valid');
  });

  it('is what the map of words decodes', () => {
    const image = memoryImage('words', { factory, user: null }, 3);
    expect(checkImage(image, words)).toBeNull();
    const [layer] = decodeLayers(image, words);
    expect(layer?.checksum?.good).toBe(true);
    expect(layer?.sticks.map(({ mapping }) => mapping)).toEqual([factory.left, factory.right]);
  });
});
