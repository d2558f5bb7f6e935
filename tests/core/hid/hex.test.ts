import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readHex, toHex } from '../../../core/hid/hex.ts';

describe('readHex', () => {
  it('reads digits of either case with blanks and line breaks anywhere', () => {
    expect(readHex(' 05 0\n1\tA1\r\nfF ')).toEqual({ ok: true, value: Uint8Array.from([5, 1, 0xa1, 0xff]) });
    expect(readHex('')).toEqual({ ok: true, value: new Uint8Array() });
  });

  it('says which letter is no digit and where it stands', () => {
    expect(readHex('05 0g')).toMatchObject({ ok: false, problem: { code: 'hex-not-a-digit', at: 4 } });
    expect(readHex('0x05')).toMatchObject({ ok: false, problem: { code: 'hex-not-a-digit', at: 1 } });
    expect(readHex('05 é')).toMatchObject({ ok: false, problem: { code: 'hex-not-a-digit', at: 3 } });
  });

  it('refuses half a byte', () => {
    expect(readHex('05 0')).toMatchObject({ ok: false, problem: { code: 'hex-odd' } });
  });

  it('reads back what toHex writes', () => {
    fc.assert(
      fc.property(fc.uint8Array(), (bytes) => {
        expect(readHex(toHex(bytes))).toEqual({ ok: true, value: bytes });
      }),
      { seed: 11 },
    );
  });
});
