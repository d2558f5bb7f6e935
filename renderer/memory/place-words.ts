/** Places that the finder found, in words, and the map that is made of one. */
import { LAYERS, type LayerName } from '../../core/image/memory-map.ts';
import type { StickCodec } from '../../core/image/stick-codec.ts';
import { STICKS } from '../../core/pad/stick.ts';
import type { Table } from '../kit/figures/table.ts';
import { hexOffset } from './change-rows.ts';
import type { FoundPlace, MapWish, PlaceReading } from './finder-state.svelte.ts';

const VALUE_WORDS = {
  minCentreMax: 'minimum, centre, maximum',
  centreAndSpans: 'centre, below, above',
  centreAboveBelow: 'centre, above, below',
} as const;

/** E.g. `12-bit pairs: above, centre, below` or `16-bit words, little end first: minimum, centre, maximum; y first`. */
export function codecWords(codec: StickCodec): string {
  const axes = codec.axes === 'yx' ? '; y first' : '';
  if (codec.form === 'packed12') return `12-bit pairs: ${codec.order.join(', ')}${axes}`;
  const values = `${VALUE_WORDS[codec.values]}${axes}`;
  return codec.bits === 8 ? `bytes: ${values}` : `${codec.bits}-bit words, ${codec.endian} end first: ${values}`;
}

/** E.g. `left 0x2c10, right 0x2c30`. */
export function placeText({ sticks }: PlaceReading): string {
  return STICKS.flatMap((stick) => {
    const found = sticks[stick];
    return found === undefined ? [] : [`${stick} ${hexOffset(found.offset)}`];
  }).join(', ');
}

/** In what form the sticks of a reading stand; both where they differ. */
export function formWords({ sticks }: PlaceReading): string {
  return [...new Set(Object.values(sticks).map(({ codec }) => codecWords(codec)))].join(' · ');
}

/** From here on a place is found as often by chance. */
export const EVEN = 0.5;

/** How often chance alone would find a place that fits as well, in words that can be weighed. */
export function chanceText(chance: number): string {
  return chance >= EVEN ? 'as often by chance' : `1 in ${Math.floor(1 / chance).toLocaleString('en-GB')}`;
}

/** Of a place with several readings that none was chosen of, the first is placed and all are told. */
export function placesTable(
  places: readonly FoundPlace[],
  readingOf: (place: FoundPlace) => PlaceReading | undefined,
): Table {
  return {
    caption: 'Likely places of the calibration, the likeliest first',
    heads: [
      { says: 'place', wraps: true },
      { says: 'stored as', words: true, wraps: true, width: '40%' },
      'off by',
      {
        says: 'chance',
        words: true,
        title: 'How often chance alone would find a place in this image that fits as well',
      },
      { says: 'again at', words: true, wraps: true, tone: 'soft' },
    ],
    rows: places.flatMap((place) => {
      const reading = readingOf(place);
      const shown = reading ?? place.readings[0];
      if (shown === undefined) return [];
      return [
        [
          placeText(shown),
          (reading === undefined ? place.readings : [reading]).map(formWords).join(' or '),
          Math.max(...Object.values(shown.sticks).map(({ furthest }) => furthest)).toFixed(0),
          chanceText(place.chance),
          place.again.map((at) => `0x${at.toString(16)}`).join(', '),
        ],
      ];
    }),
    selected: null,
  };
}

/** The places of a layer as a map holds them. */
function placesOf({ sticks }: PlaceReading): NonNullable<MapWish['layers'][LayerName]> {
  return Object.fromEntries(
    STICKS.flatMap((stick) => {
      const found = sticks[stick];
      return found === undefined ? [] : [[stick, { offset: found.offset, codec: found.codec }] as const];
    }),
  );
}

/** What a layer was confirmed to be: a reading, out of so many of its place that fit about equally well. */
interface ConfirmedReading {
  readonly reading: PlaceReading;
  readonly of: number;
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
  confirmed: Readonly<Partial<Record<LayerName, ConfirmedReading>>>,
): MapWish | null {
  const id = mapId(name);
  const layers = LAYERS.flatMap((layer) => {
    const one = confirmed[layer];
    return one === undefined ? [] : [{ layer, ...one }];
  });
  if (id === '' || layers.length === 0) return null;
  return {
    image,
    id,
    name: name.trim(),
    layers: Object.fromEntries(layers.map(({ layer, reading }) => [layer, placesOf(reading)])),
    readings: Object.fromEntries(layers.map(({ layer, of }) => [layer, of])),
  };
}
