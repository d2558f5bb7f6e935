import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { signedBits, unsignedBits } from '../../../core/hid/bits.ts';

const SEED = 12;

/** The payload as one long number, the plain way to say what a bit field is. */
function reference(payload: Uint8Array, bitOffset: number, bitSize: number): bigint {
  const whole = payload.reduceRight((sum, byte) => (sum << 8n) | BigInt(byte), 0n);
  return (whole >> BigInt(bitOffset)) & ((1n << BigInt(bitSize)) - 1n);
}

/** A payload and a field that lies within it, often right up to its end. */
const fields = fc
  .tuple(fc.integer({ min: 1, max: 32 }), fc.integer({ min: 0, max: 39 }), fc.integer({ min: 0, max: 2 }))
  .chain(([bitSize, bitOffset, spare]) => {
    const bytes = Math.ceil((bitOffset + bitSize) / 8) + spare;
    return fc.record({
      bitSize: fc.constant(bitSize),
      bitOffset: fc.constant(bitOffset),
      payload: fc.uint8Array({ minLength: bytes, maxLength: bytes }),
    });
  });

describe('bit fields', () => {
  it('are the bits of the little-endian payload, at any offset and of any size', () => {
    fc.assert(
      fc.property(fields, ({ payload, bitOffset, bitSize }) => {
        const wanted = reference(payload, bitOffset, bitSize);
        expect(BigInt(unsignedBits(payload, bitOffset, bitSize))).toBe(wanted);
        expect(BigInt(signedBits(payload, bitOffset, bitSize))).toBe(BigInt.asIntN(bitSize, wanted));
      }),
      { seed: SEED, numRuns: 2000 },
    );
  });

  it('of 32 bits reach into a fifth byte', () => {
    const payload = Uint8Array.from([0x80, 0xff, 0xff, 0xff, 0x7f]);
    expect(unsignedBits(payload, 7, 32)).toBe(4_294_967_295);
    expect(signedBits(payload, 7, 32)).toBe(-1);
  });
});
