/** How likely bytes drawn by chance would decode to numbers as near as a hit's. */
import type { StickMapping } from '../mapping/mapping.ts';
import type { StickCodec } from './stick-codec.ts';

/** Share of each byte value in an image: memory is mostly 0 and 255, so that even chances would flatter. */
export function countBytes(image: Uint8Array): Float64Array {
  const shares = new Float64Array(256);
  for (const byte of image) shares[byte] = (shares[byte] ?? 0) + 1 / image.length;
  return shares;
}

/**
 * Chance that six numbers made of independent bytes with these shares all lie within `furthest` counts of the measured ones:
 * the product over the numbers; spans may be off by twice that, for edge and centre each may.
 */
export function chanceOf(codec: StickCodec, measured: StickMapping, furthest: number, shares: Float64Array): number {
  let chance = 1;
  for (const [index, axis] of [measured.x, measured.y].entries()) {
    const { min, centre, max } = axis;
    const isEdges = codec.form === 'words' && codec.values === 'minCentreMax';
    const numbers = isEdges
      ? [
          [min, furthest],
          [centre, furthest],
          [max, furthest],
        ]
      : [
          [centre, furthest],
          [centre - min, 2 * furthest],
          [max - centre, 2 * furthest],
        ];
    for (const [value = 0, off = 0] of numbers)
      chance *= chanceWithin(codec, index === 0 ? 'x' : 'y', value - off, value + off, shares);
  }
  return chance;
}

function chanceWithin(codec: StickCodec, axis: 'x' | 'y', low: number, high: number, shares: Float64Array): number {
  if (codec.form === 'words' && codec.bits <= 8) return sumOf(shares, low, high, (byte) => byte);
  if (codec.form === 'words') return chanceOfTwo(shares, shares, 256, low, high);
  // x of a packed pair: a whole low byte and the low half of the next; y: the high half of that and a whole high byte.
  return axis === 'x'
    ? chanceOfTwo(
        halves(shares, (byte) => byte & 15),
        shares,
        256,
        low,
        high,
      )
    : chanceOfTwo(
        shares,
        halves(shares, (byte) => byte >> 4),
        16,
        low,
        high,
      );
}

/** Chance that upper·base + lower lies from low to high. */
function chanceOfTwo(upper: Float64Array, lower: Float64Array, base: number, low: number, high: number): number {
  let chance = 0;
  for (let part = 0; part < upper.length; part += 1) {
    const share = upper[part] ?? 0;
    if (share === 0 || (part + 1) * base <= low || part * base > high) continue;
    chance += share * sumOf(lower, low - part * base, high - part * base, (value) => value);
  }
  return chance;
}

function sumOf(shares: Float64Array, low: number, high: number, valueOf: (index: number) => number): number {
  let sum = 0;
  for (const [index, share] of shares.entries()) {
    const value = valueOf(index);
    if (value >= low && value <= high) sum += share;
  }
  return sum;
}

function halves(shares: Float64Array, halfOf: (byte: number) => number): Float64Array {
  const out = new Float64Array(16);
  for (const [byte, share] of shares.entries()) out[halfOf(byte)] = (out[halfOf(byte)] ?? 0) + share;
  return out;
}
