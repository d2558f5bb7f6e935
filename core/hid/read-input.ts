/** Descriptors and reports as they come from a file: hex text or bytes, told apart. */
import { done, failed, type Result } from '../result.ts';
import { digitOf, isBlank, readHex } from './hex.ts';

export type InputForm = 'auto' | 'hex' | 'bytes';

/**
 * The bytes that an input stands for. `auto` takes text that could be hex (digits a–f and blanks only, or printable
 * text, which is then refused with the place of the first wrong letter) as hex and everything else as it is: a
 * descriptor holds bytes that are no text from its first item on. A mark of byte order before hex text is skipped.
 */
export function readInput(input: Uint8Array, form: InputForm): Result<Uint8Array> {
  if (input.length === 0) return failed('input-empty', 'There is nothing to read; give hex text or bytes.', 0);
  if (form === 'bytes') return done(input);
  const text = withoutMark(input);
  if (form === 'auto' && !looksLikeText(text)) return done(input);
  const bytes = readHex(Array.from(text, (byte) => String.fromCharCode(byte)).join(''));
  if (bytes.ok && bytes.value.length === 0)
    return failed('input-empty', 'There are only blanks to read; give hex text or bytes.', 0);
  return bytes;
}

function withoutMark(input: Uint8Array): Uint8Array {
  return input[0] === 0xef && input[1] === 0xbb && input[2] === 0xbf ? input.subarray(3) : input;
}

/** Hex digits and blanks alone, or otherwise nothing but printable ASCII and blanks. */
function looksLikeText(input: Uint8Array): boolean {
  return input.every((byte) => digitOf(byte) >= 0 || isBlank(byte) || (byte > 0x20 && byte < 0x7f));
}
