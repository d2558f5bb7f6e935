/** How a stick's mapping stands in memory: six whole numbers in a few bytes. */
import type { AxisMapping, StickMapping } from '../mapping/mapping.ts';
import { done, failed, type Result } from '../result.ts';

export type SpanField = 'above' | 'centre' | 'below';

/**
 * `packed12`: three pairs of 12 bits, x then y, each pair in three bytes: b0 | (b1 & 15) << 8 and b1 >> 4 | b2 << 4; the
 * pairs are the spans above and below the centre and the centre, in either order. `words`: x's three numbers, then y's, a
 * byte each up to 8 bits, else two bytes with the number in the low bits; `centreAndSpans` has the span below before the one
 * above, `centreAboveBelow` behind it. With `axes` y stands before x, in each pair or as the first three words.
 */
export type StickCodec =
  | {
      readonly form: 'packed12';
      readonly order: readonly [SpanField, SpanField, SpanField];
      readonly axes?: 'yx';
    }
  | {
      readonly form: 'words';
      readonly bits: 8 | 10 | 12 | 16;
      readonly endian: 'little' | 'big';
      readonly values: WordValues;
      readonly axes?: 'yx';
    };

export type WordValues = 'minCentreMax' | 'centreAndSpans' | 'centreAboveBelow';

/** Two numbers of one field, in the order in which the codec has the axes: what it calls `above` is max − centre. */
type StoredPair = readonly [first: number, second: number];

/** The axes in the order in which a codec stores them. */
export function axesOf({ axes }: StickCodec): readonly ['x' | 'y', 'x' | 'y'] {
  return axes === 'yx' ? ['y', 'x'] : ['x', 'y'];
}

export function bitsOf(codec: StickCodec): number {
  return codec.form === 'packed12' ? 12 : codec.bits;
}

/** Bytes that a stick takes. */
export function lengthOf(codec: StickCodec): number {
  return codec.form === 'packed12' ? 9 : 6 * wordLength(codec.bits);
}

/** Bytes of the smallest piece that is written at a time: a pair of 12 bits, or one word. */
export function pieceLength(codec: StickCodec): number {
  return codec.form === 'packed12' ? 3 : wordLength(codec.bits);
}

function wordLength(bits: number): number {
  return bits <= 8 ? 1 : 2;
}

/**
 * The mapping that stands at an offset, whatever it is worth: min < centre < max is for the caller to check. Bits of a word
 * beyond the codec's must be 0, else null; so is what reaches beyond the image.
 */
export function decodeStick(codec: StickCodec, image: Uint8Array, offset: number): StickMapping | null {
  if (offset < 0 || offset + lengthOf(codec) > image.length) return null;
  const axes = codec.form === 'packed12' ? decodePacked(codec.order, image, offset) : decodeWords(codec, image, offset);
  if (axes === null) return null;
  const [x, y] = codec.axes === 'yx' ? [axes[1], axes[0]] : axes;
  return { x, y };
}

type StoredAxes = readonly [first: AxisMapping, second: AxisMapping];

function decodePacked(order: readonly SpanField[], image: Uint8Array, offset: number): StoredAxes {
  const pair = (field: SpanField): StoredPair => {
    const at = offset + 3 * order.indexOf(field);
    const [b0, b1, b2] = [image[at] ?? 0, image[at + 1] ?? 0, image[at + 2] ?? 0];
    return [b0 | ((b1 & 15) << 8), (b1 >> 4) | (b2 << 4)];
  };
  const [above, centre, below] = [pair('above'), pair('centre'), pair('below')];
  const axis = (index: 0 | 1) => ({
    min: centre[index] - below[index],
    centre: centre[index],
    max: centre[index] + above[index],
  });
  return [axis(0), axis(1)];
}

function decodeWords(codec: StickCodec & { form: 'words' }, image: Uint8Array, offset: number): StoredAxes | null {
  const length = wordLength(codec.bits);
  const limit = 2 ** codec.bits;
  const values: number[] = [];
  for (let word = 0; word < 6; word += 1) {
    const at = offset + word * length;
    const value = length === 1 ? (image[at] ?? 0) : readWord(image, at, codec.endian);
    if (value >= limit) return null;
    values.push(value);
  }
  const axis = (from: number) => {
    const [a = 0, b = 0, c = 0] = values.slice(from, from + 3);
    if (codec.values === 'minCentreMax') return { min: a, centre: b, max: c };
    const [below, above] = codec.values === 'centreAndSpans' ? [b, c] : [c, b];
    return { min: a - below, centre: a, max: a + above };
  };
  return [axis(0), axis(3)];
}

function readWord(image: Uint8Array, at: number, endian: 'little' | 'big'): number {
  const [first, second] = [image[at] ?? 0, image[at + 1] ?? 0];
  return endian === 'little' ? first | (second << 8) : (first << 8) | second;
}

/**
 * The bytes of a mapping. Refused by name: what is not min < centre < max in whole counts, and what the codec cannot hold (a
 * centre, edge or span of more than its bits; an edge below 0 where edges themselves are stored).
 */
export function encodeStick(codec: StickCodec, mapping: StickMapping): Result<Uint8Array> {
  const limit = 2 ** bitsOf(codec) - 1;
  const stored: number[] = [];
  for (const name of axesOf(codec)) {
    const { min, centre, max } = mapping[name];
    for (const [key, value] of Object.entries({ min, centre, max }))
      if (!Number.isInteger(value)) return refuse(`${name}.${key} is ${value}; memory takes whole counts`);
    if (!(min < centre && centre < max))
      return refuse(`${name} has ${min}, ${centre}, ${max}; minimum, centre and maximum must grow`);
    const three = storedNumbers(codec, mapping[name]);
    const bad = three.find((value) => value < 0 || value > limit);
    if (bad !== undefined) return refuse(`${name} needs the number ${bad} and the memory holds 0 to ${limit}`);
    stored.push(...three);
  }
  return done(codec.form === 'packed12' ? packSpans(codec.order, stored) : packWords(codec, stored));
}

/** An axis as it is stored; the spans of a packed pair are put in their order later. */
function storedNumbers(codec: StickCodec, { min, centre, max }: AxisMapping): [number, number, number] {
  const values = codec.form === 'words' ? codec.values : 'centreAndSpans';
  if (values === 'minCentreMax') return [min, centre, max];
  return values === 'centreAndSpans' ? [centre, centre - min, max - centre] : [centre, max - centre, centre - min];
}

function refuse(why: string): ReturnType<typeof failed> {
  return failed('image-not-encodable', `The mapping cannot be stored: ${why}; change the mapping.`);
}

/** `stored`: centre, below, above of the first axis, then of the second. */
function packSpans(order: readonly SpanField[], stored: readonly number[]): Uint8Array {
  const bytes = new Uint8Array(9);
  const index: Readonly<Record<SpanField, number>> = { centre: 0, below: 1, above: 2 };
  for (const [pair, field] of order.entries()) {
    const [a, b] = [stored[index[field]] ?? 0, stored[index[field] + 3] ?? 0];
    bytes.set([a & 0xff, (a >> 8) | ((b & 15) << 4), b >> 4], 3 * pair);
  }
  return bytes;
}

function packWords(codec: StickCodec & { form: 'words' }, stored: readonly number[]): Uint8Array {
  const length = wordLength(codec.bits);
  const bytes = new Uint8Array(6 * length);
  for (const [word, value] of stored.entries()) {
    if (length === 1) bytes[word] = value;
    else bytes.set(codec.endian === 'little' ? [value & 0xff, value >> 8] : [value >> 8, value & 0xff], 2 * word);
  }
  return bytes;
}
