/** A report log on its way to the bench and back: pieces of at most 512 KiB, base64, never the whole text at once. */

export const PIECE_BYTES = 512 * 1024;
/** String.fromCharCode takes its arguments from the stack. */
const SPREAD = 8192;

export function toBase64(bytes: Uint8Array): string {
  let letters = '';
  for (let from = 0; from < bytes.length; from += SPREAD)
    letters += String.fromCharCode(...bytes.subarray(from, from + SPREAD));
  return btoa(letters);
}

/** Throws nothing: null where the text is no base64. */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> | null {
  if (text.length % 4 !== 0 || !/^[A-Za-z0-9+/]*={0,2}$/.test(text)) return null;
  return Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
}

/** The pieces of a file in order; the last is marked. An empty file is one empty last piece. */
export async function* piecesOf(file: Blob): AsyncGenerator<{ readonly piece: string; readonly last: boolean }> {
  for (let from = 0; from === 0 || from < file.size; from += PIECE_BYTES) {
    const bytes = new Uint8Array(await file.slice(from, from + PIECE_BYTES).arrayBuffer());
    yield { piece: toBase64(bytes), last: from + PIECE_BYTES >= file.size };
  }
}
