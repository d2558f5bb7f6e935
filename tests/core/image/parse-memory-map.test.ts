import { describe, expect, it } from 'vitest';
import { bundledMaps } from '../../../core/image/bundled-maps.ts';
import type { MemoryMap } from '../../../core/image/memory-map.ts';
import { parseMemoryMap } from '../../../core/image/parse-memory-map.ts';

const [packed, words] = bundledMaps as [MemoryMap, MemoryMap];
const marker = packed.layers.user!.marker!;
const sum = words.layers.factory!.checksum!;

function changed(map: MemoryMap, path: readonly string[], value: unknown): unknown {
  const copy = structuredClone(map) as unknown as Record<string, unknown>;
  const last = path.at(-1) ?? '';
  const holder = path.slice(0, -1).reduce((at, key) => at[key] as Record<string, unknown>, copy);
  holder[last] = value;
  return copy;
}

describe('parseMemoryMap', () => {
  it.each(bundledMaps.map((map) => [map.id, map] as const))('reads a bundled map: %s', (_, map) => {
    expect(parseMemoryMap(structuredClone(map))).toEqual({ ok: true, value: map });
  });

  it.each([
    ['another kind', null, 'must be an object'],
    ['another version', changed(packed, ['version'], 2), 'version must be 1'],
    [
      'overlapping regions',
      changed(packed, ['layers', 'factory', 'sticks', 'right', 'offset'], 0x2c14),
      'overlap at byte',
    ],
    [
      'a region beyond the image',
      changed(packed, ['layers', 'factory', 'sticks', 'left', 'offset'], 49_146),
      'beyond the 49152',
    ],
    ['a volatile region', changed(packed, ['volatile'], [{ offset: 0x2c10, length: 1 }]), 'volatile'],
    [
      'a fingerprint beyond the image',
      changed(packed, ['fingerprint'], [{ offset: 49_151, bytes: '0102' }]),
      'fingerprint',
    ],
    [
      'a checksum over itself',
      changed(words, ['layers', 'factory', 'checksum', 'covers', 'length'], 26),
      'covers itself',
    ],
    [
      'a checksum beyond the image',
      changed(words, ['layers', 'factory', 'checksum', 'covers', 'length'], 4000),
      'beyond the image',
    ],
    [
      'an order that names one twice',
      changed(packed, ['layers', 'factory', 'sticks', 'left', 'codec'], {
        form: 'packed12',
        order: ['above', 'above', 'centre'],
      }),
      'each of the three once',
    ],
    ['markers of different length', changed(packed, ['layers', 'user', 'marker', 'empty'], 'ff'), 'different length'],
    [
      'equal markers',
      changed(packed, ['layers', 'user', 'marker', 'empty'], marker.valid),
      'one form for valid and empty',
    ],
    [
      'a region within the fingerprint',
      changed(packed, ['fingerprint'], [{ offset: marker.offset, bytes: marker.valid }]),
      'user marker lies in the fingerprint',
    ],
    [
      'a checksum over what changes by itself',
      changed(words, ['volatile'], [{ offset: sum.covers.offset + 22, length: 1 }]),
      'volatile',
    ],
    ['no stick', changed(packed, ['layers'], {}), 'no stick'],
  ])('refuses %s in one sentence', (_, value, says) => {
    const read = parseMemoryMap(value);
    expect(read.ok ? 'read' : read.problem.says).toContain(says);
  });
});
