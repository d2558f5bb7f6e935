import { describe, expect, test } from 'vitest';
import { imageLine, keptTable, keptText, sizeText } from '../../../renderer/memory/image-words.ts';
import {
  chanceText,
  codecWords,
  formWords,
  mapId,
  mapWish,
  placesTable,
  placeText,
} from '../../../renderer/memory/place-words.ts';
import { wishOf } from '../../../renderer/memory/plan-wish.ts';
import { readTyped } from '../../../renderer/memory/typed-mapping.ts';

const axis = { min: 800, centre: 2048, max: 3300 };
const stick = { x: axis, y: axis };
const codec = { form: 'packed12', order: ['below', 'above', 'centre'] } as const;
const found = { stick: 'left', codec, offset: 0x2c10, mapping: stick, furthest: 12 } as const;
const reading = { sticks: { left: found }, distance: null };

describe('places in words', () => {
  test('say where, how stored and how likely by chance', () => {
    expect(placeText(reading)).toBe('left 0x2c10');
    expect(codecWords(codec)).toBe('12-bit pairs: below, above, centre');
    const words = { form: 'words', bits: 16, endian: 'big', values: 'centreAboveBelow', axes: 'yx' } as const;
    expect(codecWords(words)).toBe('16-bit words, big end first: centre, above, below; y first');
    const right = { ...found, stick: 'right', codec: words } as const;
    expect(formWords({ sticks: { left: found, right }, distance: 9 })).toBe(
      `${codecWords(codec)} · ${codecWords(words)}`,
    );
    expect(formWords({ sticks: { left: found, right: { ...right, codec } }, distance: 9 })).toBe(codecWords(codec));
    expect([0.9, 0.02, 1 / 541].map(chanceText)).toEqual(['as often by chance', '1 in 50', '1 in 541']);
  });

  test('stand as a table: the furthest number of each, every reading until one is chosen, where the same bytes stand again', () => {
    const bytes = { ...codec, order: ['above', 'centre', 'below'] } as const;
    const other = { sticks: { left: { ...found, offset: 0x2c12, codec: bytes, furthest: 20 } }, distance: null };
    const place = { readings: [reading, other], decides: 'Another survey tells.', chance: 1 / 541, again: [0x7640] };
    const forms = ['12-bit pairs: below, above, centre', '12-bit pairs: above, centre, below'];
    expect(placesTable([place], () => undefined).rows).toEqual([
      ['left 0x2c10', forms.join(' or '), '12', '1 in 541', '0x7640'],
    ]);
    expect(placesTable([place], () => other).rows).toEqual([['left 0x2c12', forms[1], '20', '1 in 541', '0x7640']]);
  });

  test('become a map by its name, and none without a name or a confirmed place', () => {
    expect(mapId('  My pad, 2nd rev. ')).toBe('my-pad-2nd-rev');
    expect(mapWish('a', 'My pad', { factory: { reading, of: 4 } })).toEqual({
      image: 'a',
      id: 'my-pad',
      name: 'My pad',
      layers: { factory: { left: { offset: 0x2c10, codec } } },
      readings: { factory: 4 },
    });
    expect(mapWish('a', ' !', { factory: { reading, of: 4 } })).toBeNull();
    expect(mapWish('a', 'My pad', {})).toBeNull();
  });
});

test('an image is named by when and why it was kept, and its first digits', () => {
  const image = { image: 'ab'.repeat(32), size: 65536, kept: [{ at: '2020-01-02T03:04:05Z', why: 'read', map: null, pad: null }] }; // prettier-ignore
  expect(imageLine(image, new Date('2026-01-01'))).toMatch(/2020.*read · abababababab$/u);
  const pad = { product: 'Pad', vendorId: 1, productId: 2, serial: null, unit: '0a1b' };
  const read = { ...image, kept: image.kept.map((one) => ({ ...one, pad })) };
  expect(imageLine(read, new Date('2026-01-01'))).toMatch(/read · Pad · unit 0a1b · abababababab$/u);
  expect([65536, 65535, 1].map(sizeText)).toEqual(['64 KiB', '65535 bytes', '1 byte']);
});

test('a wish stores what is proposed for the sticks chosen, or carries a layer', () => {
  const proposed = { left: stick };
  const from = { survey: 's1' };
  expect(wishOf({ kind: 'proposal', into: 'user', sticks: ['left'], mappings: proposed, from })).toEqual({
    store: { layer: 'user', mappings: { left: stick }, from },
  });
  expect(wishOf({ kind: 'yours', into: 'user', sticks: ['right'], mappings: proposed, from })).toBeNull();
  // Never less than was asked for without a word.
  expect(wishOf({ kind: 'yours', into: 'user', sticks: ['left', 'right'], mappings: proposed, from })).toBeNull();
  expect(wishOf({ kind: 'yours', into: 'user', sticks: ['left'], mappings: proposed, from: null })).toBeNull();
  expect(wishOf({ kind: 'user:factory', into: 'user', sticks: ['right'], mappings: proposed, from })).toEqual({
    carry: { from: 'user', to: 'factory', sticks: ['right'] },
  });
});

test('typed numbers are refused by name until all six are whole counts', () => {
  const texts = Object.fromEntries(['x', 'y'].flatMap((name) => Object.entries(axis).map(([k, v]) => [`${name}.${k}`, String(v)]))); // prettier-ignore
  expect(readTyped(texts)).toEqual({ ok: true, value: stick });
  expect(readTyped({ ...texts, 'y.max': '3e3' })).toMatchObject({ problem: { says: expect.stringContaining('y max') as string } }); // prettier-ignore
  expect(readTyped({ ...texts, 'x.min': '' }).ok).toBe(false);
});

test('the vault stands as a table with the whole digest of each image and every time it was kept', () => {
  const kept = [
    { at: '2024-05-01T10:00:00Z', why: 'read', map: null, pad: null },
    { at: '2024-05-01T09:00:00Z', why: 'a file', map: null, pad: null },
  ];
  expect(keptTable([{ image: 'ab12'.repeat(16), size: 4096, kept }]).rows).toEqual([
    ['ab12'.repeat(16), '4 KiB', '2024-05-01T10:00:00Z: read; 2024-05-01T09:00:00Z: a file'],
  ]);
  const [last] = kept;
  expect(keptText(last!, new Date(Date.parse(last!.at) + 400 * 86_400_000))).toMatch(/^1 May 2024 \d\d:\d\d: read$/u);
});
