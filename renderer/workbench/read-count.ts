/** A raw count as a hand writes it: `942`, `127.5`, `127,5`, with a hyphen or a true minus; null where it is none. */
export function readCount(text: string): number | null {
  const plain = text.trim().replace('\u2212', '-').replace(',', '.');
  return /^[+-]?\d{1,9}(?:\.\d{1,3})?$/u.test(plain) ? Number(plain) : null;
}
