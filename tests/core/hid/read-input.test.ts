import { describe, expect, it } from 'vitest';
import { readInput } from '../../../core/hid/read-input.ts';
import { goldenDescriptors } from '../../support/golden-descriptors.ts';
import { hexBytes } from '../../support/hid-bytes.ts';

function text(letters: string): Uint8Array {
  return new TextEncoder().encode(letters);
}

describe('readInput', () => {
  it.each(goldenDescriptors)('tells hex text and bytes of $id apart', ({ descriptorHex }) => {
    const bytes = hexBytes(descriptorHex);
    expect(readInput(bytes, 'auto')).toEqual({ ok: true, value: bytes });
    expect(readInput(text(descriptorHex), 'auto')).toEqual({ ok: true, value: bytes });
    expect(readInput(text(descriptorHex.toUpperCase().replaceAll(/../g, '$& ')), 'auto')).toEqual({
      ok: true,
      value: bytes,
    });
  });

  it('skips a mark of byte order before hex text, and line breaks', () => {
    expect(readInput(text('\ufeff05 01\r\n09\t05\n'), 'auto')).toEqual({ ok: true, value: hexBytes('05010905') });
  });

  it('takes what it is told to take', () => {
    expect(readInput(text('0501'), 'bytes')).toEqual({ ok: true, value: text('0501') });
    expect(readInput(hexBytes('05 01'), 'hex')).toMatchObject({
      ok: false,
      problem: { code: 'hex-not-a-digit', at: 0 },
    });
  });

  it('names the first wrong letter of text that is no hex', () => {
    expect(readInput(text('05 01 descriptor'), 'auto')).toMatchObject({
      ok: false,
      problem: { code: 'hex-not-a-digit', at: 8 },
    });
    expect(readInput(text('05 0'), 'auto')).toMatchObject({ ok: false, problem: { code: 'hex-odd' } });
  });

  it.each(['auto', 'hex', 'bytes'] as const)('says that nothing came (%s)', (form) => {
    expect(readInput(new Uint8Array(), form)).toMatchObject({ ok: false, problem: { code: 'input-empty' } });
  });

  it('says that only blanks came', () => {
    expect(readInput(text(' \n'), 'auto')).toMatchObject({ ok: false, problem: { code: 'input-empty' } });
  });
});
