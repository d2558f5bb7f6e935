/** Reads runs of neighbouring fields of equal size, each in one loop. */
import { signedBits, unsignedBits } from './bits.ts';

/** How a run is read. Numbers in a flat array and not objects: the decoder spends its time on fields, not on runs. */
const UINT8 = 0;
const INT8 = 1;
const UINT16 = 2;
const INT16 = 3;
const SWITCHES = 4;
const UNSIGNED = 5;
const SIGNED = 6;

/** Numbers that a run takes: reading, index of its first value, index after the last, bit offset, bit size. */
const STRIDE = 5;

export function readingOf(bitOffset: number, bitSize: number, signed: boolean): number {
  const aligned = bitOffset % 8 === 0;
  if (aligned && bitSize === 8) return signed ? INT8 : UINT8;
  if (aligned && bitSize === 16) return signed ? INT16 : UINT16;
  if (bitSize === 1 && !signed) return SWITCHES;
  return signed ? SIGNED : UNSIGNED;
}

/** The payload must reach to the last field: no index is checked again. */
export function decodeRuns(runs: Int32Array, payload: Uint8Array, values: Float64Array): void {
  for (let run = 0; run < runs.length; run += STRIDE) {
    const first = runs[run + 1] as number;
    const end = runs[run + 2] as number;
    const size = runs[run + 4] as number;
    let bit = runs[run + 3] as number;
    let at = bit >>> 3;
    switch (runs[run] as number) {
      case UINT8:
        for (let index = first; index < end; index += 1, at += 1) values[index] = payload[at] as number;
        break;
      case INT8:
        for (let index = first; index < end; index += 1, at += 1) values[index] = ((payload[at] as number) << 24) >> 24;
        break;
      case UINT16:
        for (let index = first; index < end; index += 1, at += 2)
          values[index] = (payload[at] as number) | ((payload[at + 1] as number) << 8);
        break;
      case INT16:
        for (let index = first; index < end; index += 1, at += 2)
          values[index] = (((payload[at] as number) << 16) | ((payload[at + 1] as number) << 24)) >> 16;
        break;
      case SWITCHES:
        for (let index = first; index < end; index += 1, bit += 1)
          values[index] = ((payload[bit >>> 3] as number) >>> (bit & 7)) & 1;
        break;
      case UNSIGNED:
        for (let index = first; index < end; index += 1, bit += size) values[index] = unsignedBits(payload, bit, size);
        break;
      case SIGNED:
        for (let index = first; index < end; index += 1, bit += size) values[index] = signedBits(payload, bit, size);
        break;
    }
  }
}
