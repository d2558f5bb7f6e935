/** A memory map made of places that the finder found and the technician confirmed. */
import type { StickId } from '../pad/stick.ts';
import type { Result } from '../result.ts';
import type { Layer, LayerName, MemoryMap } from './memory-map.ts';
import { LAYERS } from './memory-map.ts';
import { parseMemoryMap } from './parse-memory-map.ts';
import { bitsOf, type StickCodec } from './stick-codec.ts';

export interface FoundMapWish {
  readonly id: string;
  readonly name: string;
  readonly size: number;
  readonly layers: Readonly<
    Partial<
      Record<LayerName, Readonly<Partial<Record<StickId, { readonly offset: number; readonly codec: StickCodec }>>>>
    >
  >;
}

/** Any stick spans more; counts. */
const LEAST_SPAN = 16;
const USUAL_BITS = 12;

/**
 * Without markers, checksums and fingerprint, which one image cannot tell: the technician adds them to the file. Counts are
 * taken to have 12 bits where the codec holds more; every host is taken to read the user layer before the factory's.
 */
export function foundMap({ id, name, size, layers }: FoundMapWish): Result<MemoryMap> {
  const named = LAYERS.filter((layer) => layers[layer] !== undefined);
  const codecs = named.flatMap((layer) => Object.values(layers[layer] ?? {}).map(({ codec }) => codec));
  const made: Partial<Record<LayerName, Layer>> = {};
  for (const layer of named) made[layer] = { marker: null, checksum: null, sticks: layers[layer] ?? {} };
  return parseMemoryMap({
    kind: 'stickwright-memory-map',
    version: 1,
    id,
    name,
    proof: 'unproven',
    size,
    fingerprint: [],
    layers: made,
    hosts: [{ name: 'any host', reads: named.toReversed() }],
    volatile: [],
    plausible: { bits: Math.min(USUAL_BITS, ...codecs.map(bitsOf)), leastSpan: LEAST_SPAN },
  });
}
