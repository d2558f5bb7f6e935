/** Long names where there is little room: their ends tell more than their middles. */

/** At most `most` (3 or more) characters, the middle left out as `…`; a text that fits stays as it is. */
export function shortenMiddle(text: string, most: number): string {
  const letters = Array.from(text);
  if (letters.length <= most) return text;
  const kept = Math.max(2, most - 1);
  const start = letters
    .slice(0, Math.ceil(kept / 2))
    .join('')
    .trimEnd();
  const end = letters
    .slice(letters.length - Math.floor(kept / 2))
    .join('')
    .trimStart();
  return `${start}…${end}`;
}
