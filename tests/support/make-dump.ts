/**
 * Memory dumps of 512 KiB with the content that real ones have: runs of 0 and 255, machine-code-like bytes, text, tables of
 * growing 16-bit numbers, pictures of slowly changing bytes, and somewhere the calibration of two sticks in two layers.
 */
import { findPlaces } from '../../core/image/rank-places.ts';
import { encodeStick, lengthOf, type StickCodec } from '../../core/image/stick-codec.ts';
import type { AxisMapping, StickMapping } from '../../core/mapping/mapping.ts';
import { createRandom, type Random } from '../../core/numeric/random.ts';

interface Dump {
  readonly image: Uint8Array;
  readonly codec: StickCodec;
  /** Of each layer. */
  readonly offsets: readonly { readonly left: number; readonly right: number }[];
  /** What a survey of the sticks now fitted shows: another part than the one that was stored. */
  readonly measured: { readonly left: StickMapping; readonly right: StickMapping };
}

const SIZE = 512 * 1024;

const codecs: readonly (readonly [StickCodec, 8 | 12])[] = [
  [{ form: 'packed12', order: ['below', 'above', 'centre'] }, 12],
  [{ form: 'packed12', order: ['centre', 'above', 'below'] }, 12],
  [{ form: 'words', bits: 16, endian: 'little', values: 'minCentreMax' }, 12],
  [{ form: 'words', bits: 16, endian: 'big', values: 'centreAndSpans' }, 12],
  [{ form: 'words', bits: 12, endian: 'little', values: 'centreAndSpans' }, 12],
  [{ form: 'words', bits: 8, endian: 'little', values: 'minCentreMax' }, 8],
];

/** Makes so many dumps, of all codecs, a third with one layer, and names those whose true place does not come first. */
export function missedPlaces(firstSeed: number, dumps: number): string[] {
  return Array.from({ length: dumps }, (_, index) => firstSeed + index).flatMap((seed) => {
    const [codec, bits] = codecs[seed % codecs.length] ?? [];
    if (codec === undefined || bits === undefined) return [];
    const dump = makeDump(seed, codec, bits, seed % 3 === 0 ? 1 : 2);
    const [first] = findPlaces(dump.image, dump.measured);
    const offsets = first?.readings.flatMap(({ sticks }) => sticks.left?.offset ?? []) ?? [];
    return dump.offsets.some(({ left }) => offsets.includes(left))
      ? []
      : [`seed ${String(seed)}: ${JSON.stringify(codec)}`];
  });
}

function makeDump(seed: number, codec: StickCodec, bits: 8 | 12, layers: 1 | 2): Dump {
  const random = createRandom(seed);
  const whole = (below: number): number => Math.floor(below * random.next());
  const image = new Uint8Array(SIZE);
  for (let at = 0; at < SIZE;) {
    const length = Math.min(SIZE - at, 256 + whole(16_384));
    fill(image.subarray(at, at + length), whole(7), random);
    at += length;
  }
  const stored = { left: makeStick(random, bits), right: makeStick(random, bits) };
  const length = lengthOf(codec);
  const gap = whole(2) === 0 ? 0 : 1 + whole(12);
  const at = 4096 + whole(SIZE - 8192);
  const place = (offset: number): void => {
    for (const [index, mapping] of [stored.left, stored.right].entries()) {
      const bytes = encodeStick(codec, mapping);
      if (!bytes.ok) throw new Error(bytes.problem.says);
      image.set(bytes.value, offset + index * (length + gap));
    }
  };
  const places = layers === 1 ? [at] : [at, (at + 2048 + whole(60_000)) % (SIZE - 4096)];
  for (const offset of places) place(offset);
  const refit = (mapping: StickMapping): StickMapping => ({
    x: refitAxis(mapping.x, bits, random),
    y: refitAxis(mapping.y, bits, random),
  });
  return {
    image,
    codec,
    offsets: places.map((left) => ({ left, right: left + length + gap })),
    measured: { left: refit(stored.left), right: refit(stored.right) },
  };
}

function makeStick(random: Random, bits: 8 | 12): StickMapping {
  const scale = bits === 8 ? 1 / 16 : 1;
  const axis = (): AxisMapping => {
    const centre = Math.round((2048 + 70 * random.normal()) * scale);
    const span = () => Math.round((1250 + 90 * random.normal()) * scale);
    return { min: centre - span(), centre, max: centre + span() };
  };
  return { x: axis(), y: axis() };
}

/** A new part: its centre elsewhere by some 2 %, its spans other by some 4 %. */
function refitAxis({ min, centre, max }: AxisMapping, bits: 8 | 12, random: Random): AxisMapping {
  const scale = bits === 8 ? 1 / 16 : 1;
  const now = Math.round(centre + 45 * scale * random.normal());
  const span = (old: number): number => Math.round(old * (1 + 0.04 * random.normal()));
  return { min: now - span(centre - min), centre: now, max: now + span(max - centre) };
}

function fill(part: Uint8Array, kind: number, random: Random): void {
  const byte = (): number => Math.floor(256 * random.next());
  if (kind === 0) part.fill(0);
  else if (kind === 1) part.fill(0xff);
  else if (kind === 2) for (let i = 0; i < part.length; i += 1) part[i] = random.next() < 0.35 ? byte() & 0x3f : byte();
  else if (kind === 3) for (let i = 0; i < part.length; i += 1) part[i] = 97 + Math.floor(26 * random.next() ** 1.5);
  else if (kind === 4) {
    const view = new DataView(part.buffer, part.byteOffset, part.byteLength);
    const step = 1 + (byte() % 9);
    for (let i = 0; i + 1 < part.length; i += 2) view.setUint16(i, (i * step) & 0x0fff, true);
  } else if (kind === 5) {
    let level = byte();
    for (let i = 0; i < part.length; i += 1) {
      level = Math.min(255, Math.max(0, level + Math.round(3 * random.normal())));
      part[i] = level;
    }
  } else for (let i = 0; i < part.length; i += 1) part[i] = byte();
}
