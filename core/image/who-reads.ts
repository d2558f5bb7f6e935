/** Which layer each kind of host takes. */
import type { StickMapping } from '../mapping/mapping.ts';
import type { StickId } from '../pad/stick.ts';
import type { DecodedLayer } from './decode-layers.ts';
import type { LayerName, MemoryMap } from './memory-map.ts';
import { isValidLayer, mappingsOf } from './valid-layers.ts';

export interface HostView {
  readonly host: string;
  /** The first of its layers that is valid; null where none is. */
  readonly layer: LayerName | null;
  readonly sticks: Readonly<Partial<Record<StickId, StickMapping>>>;
}

export function whoReads(layers: readonly DecodedLayer[], map: MemoryMap): HostView[] {
  return map.hosts.map(({ name, reads }) => {
    const found = reads.flatMap((one) => layers.filter(({ layer }) => layer === one)).find(isValidLayer);
    return { host: name, layer: found?.layer ?? null, sticks: found === undefined ? {} : mappingsOf(found) };
  });
}
