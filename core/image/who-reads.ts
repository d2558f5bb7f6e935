/** Which layer each kind of host takes. */
import type { StickMapping } from '../mapping/mapping.ts';
import type { StickId } from '../pad/stick.ts';
import type { DecodedLayer } from './decode-layers.ts';
import type { LayerName, MemoryMap } from './memory-map.ts';

export interface HostView {
  readonly host: string;
  /** The first of its layers that is valid; null where none is. */
  readonly layer: LayerName | null;
  readonly sticks: Readonly<Partial<Record<StickId, StickMapping>>>;
}

/** A layer is valid with its marker in place, or with no marker to have, and a good checksum where it has one. */
export function whoReads(layers: readonly DecodedLayer[], map: MemoryMap): HostView[] {
  return map.hosts.map(({ name, reads }) => {
    const found = reads.map((one) => layers.find(({ layer }) => layer === one)).find(isValid) ?? null;
    const sticks = found?.sticks.flatMap(({ stick, mapping }) => (mapping === null ? [] : [[stick, mapping] as const]));
    return { host: name, layer: found?.layer ?? null, sticks: Object.fromEntries(sticks ?? []) };
  });
}

function isValid(layer: DecodedLayer | undefined): boolean {
  if (layer === undefined) return false;
  return (layer.marker === 'valid' || layer.marker === 'none') && layer.checksum?.good !== false;
}
