/** Refuses a file that cannot be a memory image whatever its map: for files that a person chooses. */
import { failed, type Problem } from '../result.ts';

/** So many bytes of text and nothing else are no accident. */
const TELLING_BYTES = 64;
const MOST_BYTES = 64 * 1024 * 1024;

/** An empty file, a text, a file beyond 64 MiB; null for what may be an image. */
export function checkImageFile(bytes: Uint8Array): Problem | null {
  if (bytes.length === 0) return failed('image-empty', 'The image is empty; read the memory again.').problem;
  if (bytes.length > MOST_BYTES)
    return failed('image-too-large', 'The file is larger than 64 MiB, which no memory map takes; check the file.')
      .problem;
  if (bytes.length < TELLING_BYTES || !bytes.every(isTextByte)) return null;
  return failed(
    'image-text',
    'The file holds text, not the bytes of a memory; choose the dump itself, or turn the text into bytes first.',
  ).problem;
}

/** Printable ASCII, tab, line feed, carriage return. */
function isTextByte(byte: number): boolean {
  return (byte >= 0x20 && byte < 0x7f) || byte === 9 || byte === 10 || byte === 13;
}
