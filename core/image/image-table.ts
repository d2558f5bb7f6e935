/** What `image show` prints without `--json`: the layers decoded, then who reads which. */
import type { StickMapping } from '../mapping/mapping.ts';
import { row, type TableSection } from '../measure/table.ts';
import type { DecodedLayer } from './decode-layers.ts';
import type { HostView } from './who-reads.ts';

const markerWords = { valid: 'valid', empty: 'never written', other: 'not valid', none: 'has none' } as const;

export function imageTable(layers: readonly DecodedLayer[], hosts: readonly HostView[]): TableSection[] {
  return [
    ...layers.map(({ layer, marker, checksum, sticks }) => ({
      title: `${layer} layer`,
      rows: [
        row('marker', markerWords[marker]),
        ...(checksum === null
          ? []
          : [
              row(
                'checksum',
                checksum.good ? 'good' : `wrong: holds ${checksum.stored}, should be ${checksum.computed}`,
              ),
            ]),
        ...sticks.map(({ stick, mapping, implausible, bytes }) =>
          row(`${stick} stick`, mapping === null ? `not plausible: ${implausible ?? ''} [${bytes}]` : triples(mapping)),
        ),
      ],
    })),
    {
      title: 'who reads which layer',
      rows: hosts.map(({ host, layer }) => row(host, layer ?? 'none is valid')),
    },
  ];
}

function triples({ x, y }: StickMapping): string {
  return `x ${x.min} ${x.centre} ${x.max}, y ${y.min} ${y.centre} ${y.max}`;
}
