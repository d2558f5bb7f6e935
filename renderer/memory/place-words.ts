/** Places that the finder found, in words, and the map that is made of one. */
import type { LayerName } from '../../core/image/memory-map.ts';
import type { StickCodec } from '../../core/image/stick-codec.ts';
import { STICKS } from '../../core/pad/stick.ts';
import type { Table } from '../kit/figures/table.ts';
import { hexOffset } from './change-rows.ts';
import type { FoundPlace, MapWish } from './finder-state.svelte.ts';

/** E.g. `12-bit pairs: above, centre, below` or `16-bit words, little end first: minimum, centre, maximum`. */
export function codecWords(codec: StickCodec): string {
  if (codec.form === 'packed12') return `12-bit pairs: ${codec.order.join(', ')}`;
  const values = codec.values === 'minCentreMax' ? 'minimum, centre, maximum' : 'centre and spans';
  return codec.bits === 8 ? `bytes: ${values}` : `${codec.bits}-bit words, ${codec.endian} end first: ${values}`;
}

/** E.g. `left 0x2c10, right 0x2c30`. */
export function placeText({ sticks }: FoundPlace): string {
  return STICKS.flatMap((stick) => {
    const hit = sticks[stick];
    return hit === undefined ? [] : [`${stick} ${hexOffset(hit.offset)}`];
  }).join(', ');
}

/** How often chance alone would give a place like this in an image of these bytes, in words that can be weighed. */
export function chanceText(expected: number): string {
  if (expected >= 1) return `${expected.toPrecision(2)} by chance`;
  if (expected >= 0.001) return `${expected.toPrecision(1)} by chance`;
  return `under 1 in ${Number(Math.min(1e9, Math.floor(1 / expected)).toPrecision(1)).toLocaleString('en-GB')}`;
}

export function placesTable(places: readonly FoundPlace[]): Table {
  return {
    caption: 'Likely places of the calibration, the likeliest first',
    heads: [
      'place',
      { says: 'stored as', words: true, wraps: true, width: '30%' },
      'off by',
      {
        says: 'chance',
        words: true,
        title: 'How many such places chance alone would give in an image of these bytes',
      },
      { says: 'again at', words: true, wraps: true, tone: 'soft' },
    ],
    rows: places.map((place) => {
      const hits = Object.values(place.sticks);
      return [
        placeText(place),
        [...new Set(hits.map(({ codec }) => codecWords(codec)))].join(' · '),
        Math.max(...hits.map(({ furthest }) => furthest)).toFixed(0),
        chanceText(place.expected),
        place.again.map((at) => `0x${at.toString(16)}`).join(', '),
      ];
    }),
    selected: null,
  };
}

/** The places of a layer as a map holds them. */
function placesOf({ sticks }: FoundPlace): NonNullable<MapWish['layers'][LayerName]> {
  return Object.fromEntries(
    STICKS.flatMap((stick) => {
      const hit = sticks[stick];
      return hit === undefined ? [] : [[stick, { offset: hit.offset, codec: hit.codec }] as const];
    }),
  );
}

/** A name as the id of a map: lower case, digits, hyphens. */
export function mapId(name: string): string {
  return name
    .toLowerCase()
    .replace(/[^a-z0-9]+/gu, '-')
    .replace(/^-+|-+$/gu, '')
    .slice(0, 60);
}

/** Null where the name leaves no id, or nothing was confirmed. */
export function mapWish(
  image: string,
  name: string,
  confirmed: Readonly<Partial<Record<LayerName, FoundPlace>>>,
): MapWish | null {
  const id = mapId(name);
  if (id === '' || (confirmed.factory === undefined && confirmed.user === undefined)) return null;
  return {
    image,
    id,
    name: name.trim(),
    layers: {
      ...(confirmed.factory === undefined ? {} : { factory: placesOf(confirmed.factory) }),
      ...(confirmed.user === undefined ? {} : { user: placesOf(confirmed.user) }),
    },
  };
}
