/** Bytes as hex text and back. */
import { done, failed, type Result } from '../result.ts';

/** Reads pairs of hex digits; blanks and line breaks may stand anywhere. `at` of a problem counts characters from 0. */
export function readHex(text: string): Result<Uint8Array> {
  const bytes = new Uint8Array(Math.ceil(text.length / 2));
  let digits = 0;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (isBlank(code)) continue;
    const digit = digitOf(code);
    if (digit < 0)
      return failed('hex-not-a-digit', `"${text.charAt(at)}" is not a hex digit; give pairs of 0–9 and a–f.`, at);
    const index = digits >> 1;
    bytes[index] = (digits & 1) === 0 ? digit << 4 : (bytes[index] ?? 0) | digit;
    digits += 1;
  }
  if ((digits & 1) === 1)
    return failed('hex-odd', 'The hex text ends in half a byte; give two digits for every byte.', text.length);
  return done(bytes.slice(0, digits >> 1));
}

/** Lower-case hex, two digits a byte, no blanks. */
export function toHex(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += byte.toString(16).padStart(2, '0');
  return text;
}

/** Space, tab, line feed, vertical tab, form feed, carriage return. */
export function isBlank(code: number): boolean {
  return code === 0x20 || (code >= 0x09 && code <= 0x0d);
}

/** The value of a hex digit by its character code, −1 for anything else. */
export function digitOf(code: number): number {
  if (code >= 0x30 && code <= 0x39) return code - 0x30;
  const letter = code | 0x20;
  return letter >= 0x61 && letter <= 0x66 ? letter - 0x57 : -1;
}
