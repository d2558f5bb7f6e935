import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeUtf8 } from '../../../core/log/utf8.ts';

describe('decodeUtf8', () => {
  it('reads back every text that was encoded', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 20 }), (text) => {
        const whole = text.isWellFormed() ? text : text.toWellFormed();
        expect(decodeUtf8(new TextEncoder().encode(whole))).toBe(whole);
      }),
      { seed: 8, numRuns: 40 },
    );
  });

  it('puts one replacement for each byte that cannot be read and loses nothing around it', () => {
    expect(decodeUtf8(Uint8Array.of(0x41, 0xff, 0x42))).toBe('A\ufffdB');
    expect(decodeUtf8(Uint8Array.of(0xc3))).toBe('\ufffd');
    expect(decodeUtf8(Uint8Array.of(0xc0, 0x80, 0x41))).toBe('\ufffd\ufffdA');
    expect(decodeUtf8(Uint8Array.of(0xed, 0xa0, 0x80))).toBe('\ufffd\ufffd\ufffd');
    expect(decodeUtf8(Uint8Array.of(0xf4, 0x90, 0x80, 0x80))).toBe('\ufffd'.repeat(4));
  });

  it('reads texts longer than one piece', () => {
    const text = 'aä€🎛'.repeat(3000);
    expect(decodeUtf8(new TextEncoder().encode(text))).toBe(text);
  });
});
