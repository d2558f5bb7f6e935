/** Where a codec reads its six numbers, for looking at every byte of an image quickly. */
import type { Lane } from './number-lanes.ts';
import { lengthOf, type StickCodec } from './stick-codec.ts';

export interface LayoutNumber {
  readonly lane: Lane;
  /** From the first byte. */
  readonly at: number;
  /** Of the first or the second axis. */
  readonly axis: 0 | 1;
  /** Low and high are edges or spans. */
  readonly part: 'low' | 'centre' | 'high';
}

/** A codec and the same with its axes exchanged: both read the same numbers. */
export interface Layout {
  readonly edges: boolean;
  readonly length: number;
  /** In the order of their bytes. */
  readonly numbers: readonly LayoutNumber[];
  /** By which axis stands first. */
  readonly codecs: { readonly xy: StickCodec; readonly yx: StickCodec };
}

export function layoutOf(codec: StickCodec): Layout {
  return {
    edges: codec.form === 'words' && codec.values === 'minCentreMax',
    length: lengthOf(codec),
    numbers: codec.form === 'packed12' ? pairNumbers(codec) : wordNumbers(codec),
    codecs: { xy: codec, yx: { ...codec, axes: 'yx' } },
  };
}

function pairNumbers({ order }: StickCodec & { form: 'packed12' }): LayoutNumber[] {
  const parts = { below: 'low', centre: 'centre', above: 'high' } as const;
  return order.flatMap((field, pair): LayoutNumber[] => [
    { lane: 'firstOfPair', at: 3 * pair, axis: 0, part: parts[field] },
    // Its first bits stand in the middle byte.
    { lane: 'secondOfPair', at: 3 * pair + 1, axis: 1, part: parts[field] },
  ]);
}

const WORD_PARTS = {
  minCentreMax: ['low', 'centre', 'high'],
  centreAndSpans: ['centre', 'low', 'high'],
  centreAboveBelow: ['centre', 'high', 'low'],
} as const;

function wordNumbers({ bits, endian, values }: StickCodec & { form: 'words' }): LayoutNumber[] {
  const bytes = bits <= 8 ? 1 : 2;
  const lane = bytes === 1 ? 'byte' : endian;
  return ([0, 1] as const).flatMap((axis) =>
    WORD_PARTS[values].map((part, word) => ({ lane, at: bytes * (3 * axis + word), axis, part }) as const),
  );
}
