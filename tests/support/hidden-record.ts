/** Mixed dumps with a calibration in them, written in any of the ways that a memory map can say: axes, spans and sticks in any order. */
import { finderCodecs } from '../../core/image/finder-codecs.ts';
import type { FoundPlace, PlaceReading } from '../../core/image/found-place.ts';
import { encodeStick, lengthOf, type StickCodec } from '../../core/image/stick-codec.ts';
import type { AxisMapping, StickMapping } from '../../core/mapping/mapping.ts';
import { createRandom, type Random } from '../../core/numeric/random.ts';
import { STICKS, type StickId } from '../../core/pad/stick.ts';
import { makeMixedDump, makeStick } from './mixed-dump.ts';

type Both<T> = Readonly<Record<StickId, T>>;

interface HiddenRecord {
  readonly image: Uint8Array;
  readonly codecs: Both<StickCodec>;
  /** Of each layer. */
  readonly offsets: readonly Both<number>[];
  readonly measured: Both<StickMapping>;
}

/** How far a measured number is off, in shares of the span: the pad's own sticks, or parts that were fitted since. */
const SCATTER = { own: { centre: 0.002, span: 0.002 }, fitted: { centre: 0.018, span: 0.015 } } as const;

export function hideRecord(seed: number, mostKib: number, sticks: keyof typeof SCATTER): HiddenRecord {
  const { image } = makeMixedDump(seed, mostKib);
  const random = createRandom(seed + 1_000_000);
  const codecs = drawCodecs(random);
  const bits = codecs.left.form === 'packed12' ? 12 : codecs.left.bits === 8 ? 8 : random.next() < 0.7 ? 12 : 16;
  const stored = { left: makeStick(random, bits), right: makeStick(random, bits) };
  const offsets = drawOffsets(image.length, lengthOf(codecs.left), random);
  for (const layer of offsets) for (const stick of STICKS) put(image, layer[stick], codecs[stick], stored[stick]);
  const measure = ({ x, y }: StickMapping): StickMapping => ({
    x: measureAxis(x, 2 ** bits, SCATTER[sticks], random),
    y: measureAxis(y, 2 ** bits, SCATTER[sticks], random),
  });
  return { image, codecs, offsets, measured: { left: measure(stored.left), right: measure(stored.right) } };
}

/** Three in ten have y first; of packed pairs three in ten have an order of its own for the right stick. */
function drawCodecs(random: Random): Both<StickCodec> {
  const draw = (from: readonly StickCodec[]): StickCodec => from[random.integer(0, from.length - 1)]!;
  const axes = random.next() < 0.3 ? ({ axes: 'yx' } as const) : {};
  const left = draw(finderCodecs);
  const packed = finderCodecs.filter(({ form }) => form === 'packed12');
  const right = left.form === 'packed12' && random.next() < 0.3 ? draw(packed) : left;
  return { left: { ...left, ...axes }, right: { ...right, ...axes } };
}

/** One layer or two that do not touch, the right stick before or behind the left one, with or without a gap. */
function drawOffsets(size: number, length: number, random: Random): Both<number>[] {
  const gap = random.next() < 0.5 ? 0 : random.integer(1, 12);
  const isLeftFirst = random.next() < 0.7;
  const whole = 2 * length + gap;
  const first = random.integer(0, size - 3 * whole);
  const second = random.next() < 0.5 ? [] : [random.integer(first + whole, size - whole)];
  return [first, ...second].map((at) =>
    isLeftFirst ? { left: at, right: at + length + gap } : { right: at, left: at + length + gap },
  );
}

function put(image: Uint8Array, offset: number, codec: StickCodec, mapping: StickMapping): void {
  const bytes = encodeStick(codec, mapping);
  if (!bytes.ok) throw new Error(bytes.problem.says);
  image.set(bytes.value, offset);
}

function measureAxis(
  { min, centre, max }: AxisMapping,
  numbers: number,
  scatter: { readonly centre: number; readonly span: number },
  random: Random,
): AxisMapping {
  const off = (share: number): number => Math.round(share * (max - min) * random.normal());
  const now = centre + off(scatter.centre);
  const low = Math.max(0, now - (centre - min) + off(scatter.span));
  return { min: low, centre: now, max: Math.min(numbers - 1, now + (max - centre) + off(scatter.span)) };
}

/** The reading that is as the record was written; undefined where a place has none. */
export function rightReading({ readings }: FoundPlace, { codecs, offsets }: HiddenRecord): PlaceReading | undefined {
  const keyOf = (codec: StickCodec): string => JSON.stringify(Object.entries(codec).toSorted());
  return readings.find(({ sticks }) =>
    offsets.some((layer) =>
      Object.values(sticks).every(
        ({ stick, offset, codec }) => offset === layer[stick] && keyOf(codec) === keyOf(codecs[stick]),
      ),
    ),
  );
}

/** Whether a place is made of the record's bytes, however they are read: words may seem to begin a byte too early or too late. */
export function isOfRecord({ readings: [first] }: FoundPlace, { codecs, offsets }: HiddenRecord): boolean {
  const length = lengthOf(codecs.left);
  return offsets.some((layer) =>
    Object.values(first?.sticks ?? {}).every(({ offset, codec }) => {
      const from = Math.min(layer.left, layer.right) - 1;
      const to = Math.max(layer.left, layer.right) + length + 1;
      return offset >= from && offset + lengthOf(codec) <= to;
    }),
  );
}
