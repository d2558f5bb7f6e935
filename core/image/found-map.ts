/** A memory map made of places that the finder found and the technician confirmed. */
import type { StickId } from '../pad/stick.ts';
import { failed, type Result } from '../result.ts';
import { LAYERS, type Layer, type LayerName, type MemoryMap } from './memory-map.ts';
import { parseMemoryMap } from './parse-memory-map.ts';
import { isPlausible, whyImplausible } from './plausible.ts';
import { bitsOf, decodeStick, type StickCodec } from './stick-codec.ts';

interface StickPlace {
  readonly offset: number;
  readonly codec: StickCodec;
}

export interface FoundMapWish {
  readonly id: string;
  readonly name: string;
  /** By layer, in the reading that was chosen. */
  readonly layers: Readonly<Partial<Record<LayerName, Readonly<Partial<Record<StickId, StickPlace>>>>>>;
  /** By layer, how many readings its place had that fit about equally well; 1 where there was nothing to choose. */
  readonly readings: Readonly<Partial<Record<LayerName, number>>>;
}

/** A stick spans more of its scale to either side. */
const LEAST_SPAN_SHARE = 1 / 16;
/** So far sensors count, also where words could hold more. */
const USUAL_BITS = [8, 10, 12, 14, 16];

/**
 * Without markers, checksums and fingerprint, which one image cannot tell: the technician adds them to the file. Every host is taken
 * to read the user layer before the factory's. A map that was chosen out of several readings says so. Refused: a layer of which is
 * not said how many readings it had, and a place whose numbers in `image` cannot be those of a stick.
 */
export function foundMap({ id, name, layers, readings }: FoundMapWish, image: Uint8Array): Result<MemoryMap> {
  const named = LAYERS.filter((layer) => layers[layer] !== undefined);
  const unsaid = named.find((layer) => readings[layer] === undefined);
  if (unsaid !== undefined)
    return failed(
      'found-reading',
      `It is not said out of how many readings the ${unsaid} layer was chosen; choose one of its readings.`,
    );
  const places = named.flatMap((layer) =>
    Object.entries(layers[layer] ?? {}).map(([stick, place]) => ({
      which: `${layer} layer’s ${stick} stick`,
      ...place,
    })),
  );
  const plausible = ruleFor(places, image);
  for (const { which, offset, codec } of places) {
    const mapping = decodeStick(codec, image, offset);
    if (mapping === null || !isPlausible(mapping, plausible))
      return failed(
        'found-implausible',
        `The ${which} is no calibration: ${whyImplausible(mapping, plausible)} Choose another place.`,
      );
  }
  const made: Partial<Record<LayerName, Layer>> = {};
  for (const layer of named) made[layer] = { marker: null, checksum: null, sticks: layers[layer] ?? {} };
  const most = Math.max(...named.map((layer) => readings[layer] ?? 1));
  return parseMemoryMap({
    kind: 'stickwright-memory-map',
    version: 1,
    id,
    name,
    proof: 'unproven',
    size: image.length,
    fingerprint: [],
    layers: made,
    hosts: [{ name: 'any host', reads: named.toReversed() }],
    volatile: [],
    plausible,
    ...(most > 1 ? { chosenFrom: most } : {}),
  });
}

/** A stick rests near the middle of its scale, so that its greatest count tells the scale, whatever words could hold. */
function ruleFor(places: readonly StickPlace[], image: Uint8Array): MemoryMap['plausible'] {
  const counts = places.flatMap(({ codec, offset }) => {
    const mapping = decodeStick(codec, image, offset);
    return mapping === null ? [] : [mapping.x.max, mapping.y.max];
  });
  const held = Math.min(16, ...places.map(({ codec }) => bitsOf(codec)));
  const bits = Math.min(held, USUAL_BITS.find((usual) => counts.every((count) => count < 2 ** usual)) ?? held);
  return { bits, leastSpan: 2 ** bits * LEAST_SPAN_SHARE };
}
