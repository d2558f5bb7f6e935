/** The numbers of a stick in memory by name, piece by piece, so that a change of bytes can be told in words. */
import { toHex } from '../hid/hex.ts';
import type { AxisMapping, StickMapping } from '../mapping/mapping.ts';
import type { Change } from './patch.ts';
import {
  axesOf,
  decodeStick,
  lengthOf,
  pieceLength,
  type SpanField,
  type StickCodec,
  type WordValues,
} from './stick-codec.ts';

type Edge = keyof AxisMapping;
const EDGE_OF: Readonly<Record<SpanField, Edge>> = { above: 'max', centre: 'centre', below: 'min' };

const WORD_EDGES: Readonly<Record<WordValues, readonly Edge[]>> = {
  minCentreMax: ['min', 'centre', 'max'],
  centreAndSpans: ['centre', 'min', 'max'],
  centreAboveBelow: ['centre', 'max', 'min'],
};

/** The values that stand in each piece of a stick, in order. */
function valuesOf(codec: StickCodec): { readonly axis: 'x' | 'y'; readonly edge: Edge }[][] {
  if (codec.form === 'packed12')
    return codec.order.map((field) => axesOf(codec).map((axis) => ({ axis, edge: EDGE_OF[field] })));
  return axesOf(codec).flatMap((axis) => WORD_EDGES[codec.values].map((edge) => [{ axis, edge }]));
}

/**
 * The changes of a stick's bytes from one image to another of the same size, a piece each. `name` stands before each value,
 * e.g. `factory left`: "factory left x.max 3400 → 3350". A span that changes because the centre moves, while its edge stays, is
 * told so.
 */
export function changesOfStick(
  codec: StickCodec,
  offset: number,
  before: Uint8Array,
  after: Uint8Array,
  name: string,
): Change[] {
  const length = pieceLength(codec);
  const old = decodeStick(codec, before, offset);
  const now = decodeStick(codec, after, offset);
  const values = valuesOf(codec);
  return Array.from({ length: lengthOf(codec) / length }, (_, piece) => offset + piece * length).flatMap(
    (at, piece) => {
      const bytes = { old: toHex(before.subarray(at, at + length)), new: toHex(after.subarray(at, at + length)) };
      if (bytes.old === bytes.new) return [];
      const means = (values[piece] ?? []).flatMap(({ axis, edge }) => sayChange(old, now, axis, edge) ?? []);
      return [{ offset: at, ...bytes, means: `${name} ${means.join('; ')}` }];
    },
  );
}

function sayChange(old: StickMapping | null, now: StickMapping | null, axis: 'x' | 'y', edge: Edge): string | null {
  const [a, b] = [old?.[axis], now?.[axis]];
  const [from, to] = [a?.[edge] ?? '?', b?.[edge] ?? '?'];
  if (from !== to) return `${axis}.${edge} ${from} → ${to}`;
  if (a === undefined || b === undefined || a.centre === b.centre) return null;
  return `${axis}.${edge} stays ${to}, ${Math.abs(b[edge] - b.centre)} from the new centre`;
}
