/** Memory maps nobody would draw: layers anywhere, checksums over each other and over markers, every codec and kind; and images for them. */
import fc from 'fast-check';
import { checksumKinds, checksumLength, checksumOf } from '../../core/image/checksum.ts';
import { LAYERS, type Layer, type LayerName, type MemoryMap } from '../../core/image/memory-map.ts';
import { encodeStick, bitsOf, lengthOf, type StickCodec } from '../../core/image/stick-codec.ts';
import type { AxisMapping, PadMapping, StickMapping } from '../../core/mapping/mapping.ts';
import { STICKS } from '../../core/pad/stick.ts';

export const MAP_BYTES = 256;
const LEAST_SPAN = 4;
/** Two sticks, a marker and a checksum of each layer. */
const MOST_PIECES = 8;

const codecXFirst: fc.Arbitrary<StickCodec> = fc.oneof(
  fc
    .shuffledSubarray(['above', 'centre', 'below'] as const, { minLength: 3 })
    .map(([a, b, c]): StickCodec => ({ form: 'packed12', order: [a!, b!, c!] })),
  fc.record({
    form: fc.constant('words' as const),
    bits: fc.constantFrom(8 as const, 10 as const, 12 as const, 16 as const),
    endian: fc.constantFrom('little' as const, 'big' as const),
    values: fc.constantFrom('minCentreMax' as const, 'centreAndSpans' as const, 'centreAboveBelow' as const),
  }),
);
const codec = fc
  .tuple(codecXFirst, fc.boolean())
  .map(([one, isYFirst]): StickCodec => (isYFirst ? { ...one, axes: 'yx' } : one));

const markerBytes = fc.constantFrom(
  { valid: 'a5', empty: 'ff' },
  { valid: 'ffff', empty: null },
  { valid: '7e19', empty: 'ffff' },
  { valid: '01020304', empty: '01020300' },
);

/** Which part of what lies before or behind a checksum it covers: shares of that stretch. */
const cover = fc.record({
  behind: fc.boolean(),
  from: fc.double({ min: 0, max: 1, noNaN: true }),
  to: fc.double({ min: 0, max: 1, noNaN: true }),
});

const layer = fc.record({
  sticks: fc.constantFrom(['left', 'right'] as const, ['left'] as const),
  codecs: fc.tuple(codec, codec),
  marker: fc.option(markerBytes),
  checksum: fc.option(
    fc.record({
      kind: fc.constantFrom(...checksumKinds),
      endian: fc.constantFrom('little' as const, 'big' as const),
      cover,
    }),
  ),
});

/** May be one that is refused: checksums may cover each other in a circle. */
export const anyMap: fc.Arbitrary<MemoryMap> = fc
  .record({
    factory: layer,
    user: fc.option(layer),
    order: fc.array(fc.nat(1000), { minLength: MOST_PIECES, maxLength: MOST_PIECES }),
    gaps: fc.array(fc.nat(5), { minLength: MOST_PIECES, maxLength: MOST_PIECES }),
  })
  .map(({ factory, user, order, gaps }) => {
    const wishes = { factory, ...(user === null ? {} : { user }) };
    const pieces = Object.entries(wishes).flatMap(([name, { sticks, codecs, marker, checksum }]) => [
      ...sticks.map((stick, index) => ({ of: `${name} ${stick}`, length: lengthOf(codecs[index]!) })),
      ...(marker === null ? [] : [{ of: `${name} marker`, length: marker.valid.length / 2 }]),
      ...(checksum === null ? [] : [{ of: `${name} checksum`, length: checksumLength(checksum.kind) }]),
    ]);
    const places = new Map<string, number>();
    let at = 0;
    const shuffled = pieces.map((piece, index) => ({ piece, by: order[index] ?? 0 })).toSorted((a, b) => a.by - b.by);
    for (const [index, { piece }] of shuffled.entries()) {
      at += gaps[index] ?? 0;
      places.set(piece.of, at);
      at += piece.length;
    }
    const layers = Object.fromEntries(
      Object.entries(wishes).map(([name, { sticks, codecs, marker, checksum }]): [string, Layer] => {
        const own = places.get(`${name} checksum`) ?? 0;
        return [
          name,
          {
            marker: marker === null ? null : { offset: places.get(`${name} marker`)!, ...marker },
            checksum:
              checksum === null
                ? null
                : {
                    kind: checksum.kind,
                    endian: checksum.endian,
                    offset: own,
                    covers: covered(own, checksumLength(checksum.kind), at, checksum.cover),
                  },
            sticks: Object.fromEntries(
              sticks.map((stick, index) => [stick, { offset: places.get(`${name} ${stick}`)!, codec: codecs[index]! }]),
            ),
          },
        ];
      }),
    );
    const bits = Math.min(
      ...Object.values(wishes).flatMap(({ sticks, codecs }) => sticks.map((_, index) => bitsOf(codecs[index]!))),
    );
    return {
      kind: 'stickwright-memory-map',
      version: 1,
      id: 'any-map',
      name: 'Any map',
      proof: 'unproven',
      size: MAP_BYTES,
      fingerprint: [],
      layers,
      hosts: [],
      volatile: [],
      plausible: { bits, leastSpan: LEAST_SPAN },
    };
  });

function covered(
  own: number,
  length: number,
  end: number,
  { behind, from, to }: { behind: boolean; from: number; to: number },
) {
  const [low, high] = behind || own === 0 ? [own + length, Math.max(end, own + length + 8)] : [0, own];
  const [a, b] = [from, to].map((share) => Math.round(low + share * (high - low))).toSorted((x, y) => x - y);
  return a! < b! ? { offset: a!, length: b! - a! } : { offset: low, length: high - low };
}

/** Numbers that every codec of the map can hold. */
export function anyNumbers({ plausible: { bits } }: MemoryMap): fc.Arbitrary<Required<PadMapping>> {
  const share = (low: number, high: number) =>
    fc.integer({ min: Math.ceil(low * 2 ** bits), max: Math.floor(high * 2 ** bits) });
  const axis: fc.Arbitrary<AxisMapping> = fc.record({
    min: share(0, 0.2),
    centre: share(0.45, 0.55),
    max: share(0.8, 0.99),
  });
  const stick: fc.Arbitrary<StickMapping> = fc.record({ x: axis, y: axis });
  return fc.record({ left: stick, right: stick });
}

/** Seeded bytes with these numbers in place; a layer that is not used has its marker empty, and whatever checksum stands there. */
export function imageOf(
  map: MemoryMap,
  fill: Uint8Array,
  held: Readonly<Record<LayerName, PadMapping>>,
  unused: readonly LayerName[],
): Uint8Array {
  const image = Uint8Array.from({ length: map.size }, (_, at) => fill[at % fill.length] ?? 0);
  const isUnused = (name: LayerName): boolean => unused.includes(name) && map.layers[name]?.marker != null;
  for (const name of LAYERS) {
    const { sticks, marker } = map.layers[name] ?? { sticks: {}, marker: null };
    for (const stick of STICKS) {
      const [place, mapping] = [sticks[stick], held[name][stick]];
      if (place === undefined || mapping === undefined || isUnused(name)) continue;
      const bytes = encodeStick(place.codec, mapping);
      if (!bytes.ok) throw new Error(bytes.problem.says);
      image.set(bytes.value, place.offset);
    }
    if (marker === null) continue;
    const wanted = isUnused(name) ? (marker.empty ?? '00'.repeat(marker.valid.length / 2)) : marker.valid;
    image.set(Buffer.from(wanted, 'hex'), marker.offset);
  }
  // As often as there are checksums: the last round finds each right, in whichever order they hang together.
  for (let round = 0; round < LAYERS.length; round += 1)
    for (const name of LAYERS) {
      const { checksum } = map.layers[name] ?? { checksum: null };
      if (checksum === null || isUnused(name)) continue;
      image.set(sumOver(image, checksum), checksum.offset);
    }
  return image;
}

export function sumOver(image: Uint8Array, { kind, endian, covers }: NonNullable<Layer['checksum']>): Uint8Array {
  return checksumOf(kind, endian, image.subarray(covers.offset, covers.offset + covers.length));
}
