/** What the layers that a pad would use hold. */
import type { PadMapping } from '../mapping/mapping.ts';
import type { DecodedLayer } from './decode-layers.ts';
import type { LayerName } from './memory-map.ts';

/** Its marker is in place, or it has none to have; what its checksum says is another question. */
export function isMarkedLayer({ marker }: Pick<DecodedLayer, 'marker'>): boolean {
  return marker === 'valid' || marker === 'none';
}

/** A layer is valid where it is marked so and has a good checksum, if it has one. */
export function isValidLayer(layer: DecodedLayer): boolean {
  return isMarkedLayer(layer) && layer.checksum?.good !== false;
}

/** The mappings of each layer; null for one that is not valid, or not there. */
export function validLayers(layers: readonly DecodedLayer[]): Readonly<Record<LayerName, PadMapping | null>> {
  const held = (name: LayerName): PadMapping | null => {
    const found = layers.find(({ layer }) => layer === name);
    return found === undefined || !isValidLayer(found) ? null : mappingsOf(found);
  };
  return { factory: held('factory'), user: held('user') };
}

export function mappingsOf({ sticks }: DecodedLayer): PadMapping {
  return Object.fromEntries(
    sticks.flatMap(({ stick, mapping }) => (mapping === null ? [] : [[stick, mapping] as const])),
  );
}
