import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { finderCodecs } from '../../../core/image/finder-codecs.ts';
import { bitsOf, decodeStick, encodeStick, lengthOf, type StickCodec } from '../../../core/image/stick-codec.ts';
import type { AxisMapping } from '../../../core/mapping/mapping.ts';

const words = ([8, 10, 12, 16] as const).flatMap((bits) =>
  (['little', 'big'] as const).flatMap((endian) =>
    (['minCentreMax', 'centreAndSpans', 'centreAboveBelow'] as const).map((values): StickCodec => ({
      form: 'words',
      bits,
      endian,
      values,
    })),
  ),
);
const xFirst = [...finderCodecs.filter(({ form }) => form === 'packed12'), ...words];
const codecs = xFirst.flatMap((codec): StickCodec[] => [codec, { ...codec, axes: 'yx' }]);
const named = codecs.map((codec) => [JSON.stringify(codec), codec] as const);

/** Minimum, centre and maximum that a codec can hold. */
function axisOf(codec: StickCodec): fc.Arbitrary<AxisMapping> {
  const most = 2 ** bitsOf(codec) - 1;
  return fc
    .tuple(fc.integer({ min: 0, max: most }), fc.integer({ min: 0, max: most }), fc.integer({ min: 0, max: most }))
    .map((three) => three.toSorted((a, b) => a - b))
    .filter(([a = 0, b = 0, c = 0]) => a < b && b < c)
    .map(([min = 0, centre = 0, max = 0]) => ({ min, centre, max }));
}

describe('a stick codec', () => {
  it.each(named)('decodes what it encoded: %s', (_, codec) => {
    fc.assert(
      fc.property(axisOf(codec), axisOf(codec), fc.nat(20), (x, y, offset) => {
        const bytes = encodeStick(codec, { x, y });
        if (!bytes.ok) throw new Error(bytes.problem.says);
        const image = new Uint8Array(60).fill(0xa5);
        image.set(bytes.value, offset);
        expect(bytes.value).toHaveLength(lengthOf(codec));
        expect(decodeStick(codec, image, offset)).toEqual({ x, y });
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it.each(named)('encodes what it decoded, from any bytes that are a mapping: %s', (_, codec) => {
    fc.assert(
      fc.property(fc.uint8Array({ minLength: lengthOf(codec), maxLength: lengthOf(codec) }), (bytes) => {
        const mapping = decodeStick(codec, bytes, 0);
        if (mapping === null) return;
        const again = encodeStick(codec, mapping);
        if (again.ok) expect(again.value).toEqual(bytes);
      }),
      { seed: 4, numRuns: 500 },
    );
  });

  // All pairs of 12 bits: 2 × 4,096 values of either half, through the centre of a packed stick.
  it('packs every 12-bit pair as b0 | (b1 & 15) << 8 and b1 >> 4 | b2 << 4', () => {
    const codec: StickCodec = { form: 'packed12', order: ['centre', 'below', 'above'] };
    for (let value = 1; value < 4095; value += 1) {
      const other = 4095 - value;
      const axis = (centre: number) => ({ min: centre - 1, centre, max: centre + 1 });
      const bytes = encodeStick(codec, { x: axis(value), y: axis(other) });
      if (!bytes.ok) throw new Error(bytes.problem.says);
      const [b0 = 0, b1 = 0, b2 = 0] = bytes.value;
      expect([b0 | ((b1 & 15) << 8), (b1 >> 4) | (b2 << 4)]).toEqual([value, other]);
    }
  });

  it('stores min, centre and max of a byte exhaustively', () => {
    const codec: StickCodec = { form: 'words', bits: 8, endian: 'little', values: 'minCentreMax' };
    const y = { min: 1, centre: 2, max: 3 };
    for (let min = 0; min < 254; min += 3)
      for (let centre = min + 1; centre < 255; centre += 2)
        for (let max = centre + 1; max < 256; max += 5) {
          const bytes = encodeStick(codec, { x: { min, centre, max }, y });
          expect(bytes.ok && [...bytes.value]).toEqual([min, centre, max, 1, 2, 3]);
        }
  });

  it('refuses by name what it cannot hold', () => {
    const good = { min: 100, centre: 2000, max: 4000 };
    const packed: StickCodec = { form: 'packed12', order: ['above', 'centre', 'below'] };
    const edges: StickCodec = { form: 'words', bits: 10, endian: 'big', values: 'minCentreMax' };
    const says = (codec: StickCodec, x: AxisMapping): string => {
      const bytes = encodeStick(codec, { x, y: good });
      return bytes.ok ? 'encoded' : bytes.problem.says;
    };
    expect(says(packed, { min: 0.5, centre: 2, max: 3 })).toContain('x.min is 0.5');
    expect(says(packed, { min: 5, centre: 2, max: 3 })).toContain('must grow');
    expect(says(packed, { min: -3000, centre: 2000, max: 4000 })).toContain('5000');
    expect(says(packed, { min: 0, centre: 1, max: 4097 })).toContain('4096');
    expect(says(edges, { min: -1, centre: 1, max: 3 })).toContain('-1');
    expect(says(edges, { min: 0, centre: 1, max: 1024 })).toContain('1024');
  });

  it('reads nothing beyond the image', () => {
    for (const [, codec] of named) expect(decodeStick(codec, new Uint8Array(lengthOf(codec)), 1)).toBeNull();
  });
});
