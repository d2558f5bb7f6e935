/** Bit fields of a report, little-endian, at any offset, 1 to 32 bits (HID 1.11, 8.4). */

/** The field as an unsigned number. The payload must reach to its last bit. */
export function unsignedBits(payload: Uint8Array, bitOffset: number, bitSize: number): number {
  const first = bitOffset >>> 3;
  const shift = bitOffset & 7;
  const last = (bitOffset + bitSize - 1) >>> 3;
  // Every byte up to `last` is there, so no fallback is needed.
  let word = payload[first] as number;
  if (last > first) word |= (payload[first + 1] as number) << 8;
  if (last > first + 1) word |= (payload[first + 2] as number) << 16;
  if (last > first + 2) word |= (payload[first + 3] as number) << 24;
  let value = word >>> shift;
  // A field of more than 25 bits can reach into a fifth byte, whose bits a 32-bit word has no room for.
  if (last > first + 3) value |= (payload[last] as number) << (32 - shift);
  const spare = 32 - bitSize;
  return (value << spare) >>> spare;
}

/** The field sign-extended from its own size. */
export function signedBits(payload: Uint8Array, bitOffset: number, bitSize: number): number {
  const spare = 32 - bitSize;
  return (unsignedBits(payload, bitOffset, bitSize) << spare) >> spare;
}
