/** UTF-8 to text without a platform's decoder: core runs in a host, in a worker and in a window alike. */

const REPLACEMENT = 0xfffd;
/** Arguments a call may safely have. */
const PIECE = 4096;

/** What is not UTF-8 (a stray byte, a cut or overlong sequence, half a surrogate pair) becomes U+FFFD, one for each byte. */
export function decodeUtf8(bytes: Uint8Array): string {
  let text = '';
  let codes: number[] = [];
  for (let at = 0; at < bytes.length;) {
    const lead = bytes[at] ?? 0;
    const length = sequenceLength(lead);
    const code = length === 1 ? lead : readSequence(bytes, at, length);
    codes.push(code < 0 ? REPLACEMENT : code);
    at += code < 0 ? 1 : length;
    if (codes.length === PIECE) {
      text += String.fromCodePoint(...codes);
      codes = [];
    }
  }
  return text + String.fromCodePoint(...codes);
}

/** 0 for a byte that begins no sequence. */
function sequenceLength(lead: number): number {
  if (lead < 0x80) return 1;
  if (lead >= 0xc2 && lead <= 0xdf) return 2;
  if (lead >= 0xe0 && lead <= 0xef) return 3;
  return lead >= 0xf0 && lead <= 0xf4 ? 4 : 0;
}

const LEAST = [0, 0, 0x80, 0x800, 0x10000];

/** −1 where the sequence is not whole or stands for a code that UTF-8 may not hold in that length. */
function readSequence(bytes: Uint8Array, at: number, length: number): number {
  if (length === 0 || at + length > bytes.length) return -1;
  let code = (bytes[at] ?? 0) & (0x7f >> length);
  for (let more = 1; more < length; more += 1) {
    const byte = bytes[at + more] ?? 0;
    if ((byte & 0xc0) !== 0x80) return -1;
    code = (code << 6) | (byte & 0x3f);
  }
  const isHalfPair = code >= 0xd800 && code <= 0xdfff;
  return code < (LEAST[length] ?? 0) || code > 0x10ffff || isHalfPair ? -1 : code;
}
