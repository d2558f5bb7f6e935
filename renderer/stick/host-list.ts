/** The hosts that read a pad's stored mappings, each with the layer that it takes. */
import type { LayerName } from '../../core/image/memory-map.ts';
import type { StickMapping } from '../../core/mapping/mapping.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { Reply } from '../../shared/contract.ts';
import type { SurveyDetails } from './opened-survey.svelte.ts';

export interface Host {
  readonly name: string;
  /** Null where none of the layers that it reads is valid. */
  readonly layer: LayerName | null;
  /** Null where the layer holds none of the stick. */
  readonly mapping: StickMapping | null;
}

type Layers = NonNullable<SurveyDetails['sticks'][StickId]>['layers'];

/** The map of the image says who reads which layer first. */
export function hostsOfImage({ hosts }: Pick<Reply<'images.open'>, 'hosts'>, stick: StickId): Host[] {
  return hosts.map(({ host, layer, sticks }) => ({ name: host, layer, mapping: sticks[stick] ?? null }));
}

/** A log says what the layers hold, but not who reads them; empty where it says nothing. */
export function hostsOfSurvey(layers: Layers): Host[] {
  if (layers === null) return [];
  return (['user', 'factory'] as const).map((layer) => ({
    name: `A host that reads the ${layer} layer`,
    layer: layers[layer] === null ? null : layer,
    mapping: layers[layer],
  }));
}

/** Places of the two to look at first: two that see something, of different layers where there are such. */
export function usualPair(hosts: readonly Host[]): readonly [number, number] {
  const seeing = hosts.flatMap(({ mapping }, index) => (mapping === null ? [] : [index]));
  const first = seeing[0] ?? 0;
  const other =
    seeing.find((index) => hosts[index]?.layer !== hosts[first]?.layer) ?? seeing[1] ?? (first === 0 ? 1 : 0);
  return [first, Math.min(other, Math.max(0, hosts.length - 1))];
}
