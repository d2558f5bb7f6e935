/** Checksums over stretches of an image. The cyclic ones are the crc package's, under its names. */
import crc16ccitt from 'crc/calculators/crc16ccitt';
import crc16kermit from 'crc/calculators/crc16kermit';
import crc16modbus from 'crc/calculators/crc16modbus';
import crc16xmodem from 'crc/calculators/crc16xmodem';
import crc32 from 'crc/calculators/crc32';
import crc8 from 'crc/calculators/crc8';

const kinds = {
  /** Sum of the bytes, low 8 bits. */
  sum8: { bytes: 1, of: (part: Uint8Array) => part.reduce((sum, byte) => (sum + byte) & 0xff, 0) },
  /** Sum of the bytes, low 16 bits. */
  sum16: { bytes: 2, of: (part: Uint8Array) => part.reduce((sum, byte) => (sum + byte) & 0xffff, 0) },
  /** All bytes combined by exclusive or. */
  xor8: { bytes: 1, of: (part: Uint8Array) => part.reduce((all, byte) => all ^ byte, 0) },
  crc8: { bytes: 1, of: (part: Uint8Array) => crc8(part) },
  crc16ccitt: { bytes: 2, of: (part: Uint8Array) => crc16ccitt(part) },
  crc16kermit: { bytes: 2, of: (part: Uint8Array) => crc16kermit(part) },
  crc16modbus: { bytes: 2, of: (part: Uint8Array) => crc16modbus(part) },
  crc16xmodem: { bytes: 2, of: (part: Uint8Array) => crc16xmodem(part) },
  crc32: { bytes: 4, of: (part: Uint8Array) => crc32(part) >>> 0 },
} as const;

export type ChecksumKind = keyof typeof kinds;
export const checksumKinds = Object.keys(kinds) as ChecksumKind[];

/** Bytes that a checksum of this kind takes. */
export function checksumLength(kind: ChecksumKind): number {
  return kinds[kind].bytes;
}

/** The checksum of some bytes, as it stands in memory. */
export function checksumOf(kind: ChecksumKind, endian: 'little' | 'big', part: Uint8Array): Uint8Array {
  const { bytes, of } = kinds[kind];
  const value = of(part);
  const stored = Uint8Array.from({ length: bytes }, (_, index) => Math.floor(value / 2 ** (8 * index)) & 0xff);
  return endian === 'little' ? stored : stored.reverse();
}
