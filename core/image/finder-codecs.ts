/** The forms that the finder tries: all that `StickCodec` can say, each with x or with y first. */
import { layoutOf, type Layout } from './finder-layouts.ts';
import type { SpanField, StickCodec, WordValues } from './stick-codec.ts';

const orders: readonly (readonly [SpanField, SpanField, SpanField])[] = [
  ['above', 'below', 'centre'],
  ['above', 'centre', 'below'],
  ['below', 'above', 'centre'],
  ['below', 'centre', 'above'],
  ['centre', 'above', 'below'],
  ['centre', 'below', 'above'],
];

const values: readonly WordValues[] = ['minCentreMax', 'centreAndSpans', 'centreAboveBelow'];

/** With x first. A word that is wide enough reads the narrower forms too, so that two bytes are tried as 16 bits alone. */
export const finderCodecs: readonly StickCodec[] = [
  ...orders.map((order): StickCodec => ({ form: 'packed12', order })),
  ...values.flatMap((form): StickCodec[] => [
    { form: 'words', bits: 8, endian: 'little', values: form },
    { form: 'words', bits: 16, endian: 'little', values: form },
    { form: 'words', bits: 16, endian: 'big', values: form },
  ]),
];

export const finderLayouts: readonly Layout[] = finderCodecs.map(layoutOf);
