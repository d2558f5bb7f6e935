/** What is known of each layer of an image, and who reads which. */
import { count } from '../../core/plot/number-text.ts';
import type { StickId } from '../../core/pad/stick.ts';
import type { Table } from '../kit/figures/table.ts';
import { MARKER_WORDS } from './image-words.ts';
import type { ImageDetails } from './memory-images.svelte.ts';

export function layersTable(layers: ImageDetails['layers']): Table {
  return {
    caption: 'Marker and checksum of each layer',
    heads: [
      'layer',
      { says: 'marker', words: true, wraps: true, definition: 'Bytes that say whether the layer is to be used.' },
      {
        says: 'checksum',
        words: true,
        wraps: true,
        definition: "Bytes computed from the layer's other bytes: a pad may ignore a layer whose checksum is wrong.",
      },
    ],
    rows: layers.map(({ layer, marker, checksum }) => [
      layer,
      MARKER_WORDS[marker],
      marker === 'empty' ? '—' : checksumWords(checksum),
    ]),
    selected: null,
  };
}

export function readersTable(hosts: ImageDetails['hosts'], stick: StickId): Table {
  return {
    caption: 'Who reads which layer',
    heads: [
      { says: 'who reads', wraps: true },
      { says: 'layer', words: true, wraps: true },
      { says: 'its x range', words: true },
    ],
    rows: hosts.map(({ host, layer, sticks }) => {
      const x = sticks[stick]?.x;
      return [host, layer ?? 'none is valid', x === undefined ? '—' : `${count(x.min)} … ${count(x.max)}`];
    }),
    selected: null,
  };
}

function checksumWords(checksum: ImageDetails['layers'][number]['checksum']): string {
  if (checksum === null) return 'has none';
  return checksum.good ? 'good' : `wrong: holds ${checksum.stored}, should be ${checksum.computed}`;
}
