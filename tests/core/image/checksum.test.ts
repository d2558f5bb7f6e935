import { describe, expect, it } from 'vitest';
import { checksumKinds, checksumLength, checksumOf, type ChecksumKind } from '../../../core/image/checksum.ts';

const digits = new TextEncoder().encode('123456789');

describe('checksumOf', () => {
  // Check values of the catalogue of parametrised CRC algorithms for the text 123456789 (from memory); sums by hand: 477.
  it.each([
    ['sum8', 'dd'],
    ['sum16', '01dd'],
    ['xor8', '31'],
    ['crc8', 'f4'],
    ['crc16ccitt', '29b1'],
    ['crc16xmodem', '31c3'],
    ['crc16modbus', '4b37'],
    ['crc16kermit', '2189'],
    ['crc32', 'cbf43926'],
  ] as const)('gives the published check value: %s', (kind, hex) => {
    expect(Buffer.from(checksumOf(kind, 'big', digits)).toString('hex')).toBe(hex);
  });

  it.each(checksumKinds)('stands the other way round with the little end first: %s', (kind: ChecksumKind) => {
    const big = checksumOf(kind, 'big', digits);
    expect(big).toHaveLength(checksumLength(kind));
    expect([...checksumOf(kind, 'little', digits)]).toEqual([...big].reverse());
  });
});
