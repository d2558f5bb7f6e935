/** What the layers that a pad would use hold. */
import type { PadMapping } from '../mapping/mapping.ts';
import type { DecodedLayer } from './decode-layers.ts';
import type { LayerName } from './memory-map.ts';

/** A layer is valid with its marker in place, or with no marker to have, and a good checksum where it has one. */
export function isValidLayer({ marker, checksum }: DecodedLayer): boolean {
  return (marker === 'valid' || marker === 'none') && checksum?.good !== false;
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
